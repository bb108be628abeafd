@echo off
rem Runs Lampwise with the Java that lies beside it, from any folder. Nothing else is needed.
rem LAMPWISE_JAVA_OPTS holds more options for that Java.
rem Ends with the command's own status, or with 3 if it could not be started.
setlocal
set "here=%~dp0"
if not exist "%here%java\bin\java.exe" (
  echo lampwise: there is no java\bin\java.exe beside this file: unpack all of it anew>&2
  exit /b 3
)
set "options=-Xshare:auto -Xlog:disable -XX:+UseSerialGC -XX:-UsePerfData -Djava.awt.headless=true"
rem The second compiler pays off only where much is computed.
set "quick=-XX:TieredStopAtLevel=1"
for %%c in (score simulate plan) do if "%~1"=="%%c" set "quick="
"%here%java\bin\java.exe" %options% %quick% -XX:SharedArchiveFile="%here%app\lampwise.jsa" %LAMPWISE_JAVA_OPTS% -cp "%here%app\lampwise.jar" lampwise.cli.Main %*
exit /b %ERRORLEVEL%
