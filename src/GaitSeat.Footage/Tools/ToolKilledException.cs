namespace GaitSeat.Footage;

/// <summary>
/// ffmpeg or ffprobe was ended by a signal of somebody else's, most often by the system for want of memory. Nothing is wrong with the clip as far as one knows:
/// it is neither set aside nor taken as measured up to there, and may go through a little later.
/// </summary>
public sealed class ToolKilledException(string message) : IOException(message);
