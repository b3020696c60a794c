namespace GaitSeat.Footage;

/// <summary>Which frames of a clip are decoded.</summary>
public enum FrameChoice
{
    /// <summary>All of them.</summary>
    All,

    /// <summary>Those that need no other frame: about one a second in what phones write, and cheap, because nothing between them is decoded.</summary>
    KeyFrames,
}
