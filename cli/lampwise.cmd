@echo off
rem Runs Lampwise from its source tree on Windows, from any folder. Builds it on first use;
rem after a change of the sources, delete cli\target\lampwise.jar.
rem JAVA_HOME is the Java to use (17 or newer), else the one on PATH is.
rem LAMPWISE_JAVA_OPTS holds more options for it.
rem Ends with the command's own status, or with 3 if it could not be started.
setlocal
set "root=%~dp0.."
set "jar=%~dp0target\lampwise.jar"
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"
if exist "%jar%" goto run
echo lampwise: building (first use, about a minute) ...>&2
call mvn -q -B -ntp -f "%root%\pom.xml" -Dmaven.test.skip package 1>&2
if not exist "%jar%" (
  echo lampwise: could not be built: see above>&2
  exit /b 3
)
:run
"%java%" -version >nul 2>&1
if errorlevel 1 (
  echo lampwise: no java found: install Java 17 or newer, or set JAVA_HOME>&2
  exit /b 3
)
set "options=-Xshare:auto -Xlog:disable -XX:+UseSerialGC -XX:-UsePerfData -Djava.awt.headless=true"
rem The second compiler pays off only where much is computed.
set "quick=-XX:TieredStopAtLevel=1"
for %%c in (score simulate plan) do if "%~1"=="%%c" set "quick="
"%java%" %options% %quick% %LAMPWISE_JAVA_OPTS% -cp "%jar%" lampwise.cli.Main %*
exit /b %ERRORLEVEL%
