namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>How a clip left the worker's hands.</summary>
public enum NightEnd
{
    Measured,
    SetAside,
    AlreadyDone,
    NoConsent,

    /// <summary>Could not be done now and is tried again later.</summary>
    PutOff,
}

/// <summary>A clip's line in the journal of a night.</summary>
/// <param name="Seconds">Wall clock from beginning to end, waiting included, s.</param>
/// <param name="Retries">How often it was tried again.</param>
/// <param name="Flags">One line for each finding.</param>
public sealed record NightEntry(
    DateTimeOffset At, string Worker, string ClipFile, NightEnd End, string? Reason, string? Detail, int Frames, int Strides, IReadOnlyList<string> Flags, double Seconds, int Retries);
