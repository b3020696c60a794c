namespace GaitSeat.Cli;

/// <summary>How the program ends. Documented in the README; scripts may rely on them.</summary>
public static class ExitCodes
{
    /// <summary>Everything asked for was done.</summary>
    public const int Done = 0;

    /// <summary>Something went wrong that should not: a bug, or the machine.</summary>
    public const int Failed = 1;

    /// <summary>The command, a folder, the sheet or the pipeline file is not usable as given. Nothing was done.</summary>
    public const int WrongUsage = 2;

    /// <summary>The run went through, and some clips were set aside or put off; the rest is in the dataset. Of a study: some question has no answer, and the report says why.</summary>
    public const int SomeSetAside = 3;

    /// <summary>The run went through, and no clip could be measured. Of a study: no question has an answer.</summary>
    public const int NoneMeasured = 4;

    /// <summary>Something the program needs is missing or damaged: FFmpeg, the model weights.</summary>
    public const int NotInstalled = 5;

    /// <summary>Stopped by Ctrl-C or a signal; a second run goes on from there.</summary>
    public const int Stopped = 130;
}
