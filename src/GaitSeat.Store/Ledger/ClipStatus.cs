namespace GaitSeat.Store;

/// <summary>What became of a clip.</summary>
public enum ClipStatus
{
    /// <summary>Looked at from end to end; it may still hold no stride.</summary>
    Measured,

    /// <summary>Cannot be measured. Recorded with its reason and not tried again unless the file changes.</summary>
    SetAside,

    /// <summary>The rider did not agree. Nothing of the clip is kept: no row in any table.</summary>
    NoConsent,
}
