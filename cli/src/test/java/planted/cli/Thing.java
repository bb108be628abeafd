package planted.cli;

/** Something of this layer for another one to use. */
public final class Thing {}
