using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>What one reading of a clip came to. Give one to <see cref="FrameReader"/>; it is complete when the last frame has been taken.</summary>
public sealed class ReadReport
{
    private readonly List<LeftOut> _leftOut = [];
    private readonly List<string> _remarks = [];

    /// <summary>Frames given out.</summary>
    public int FramesRead { get; internal set; }

    /// <summary>Time of the last frame given out, s; NaN before the first.</summary>
    public double LastTimeSeconds { get; internal set; } = double.NaN;

    /// <summary>Parts of the clip that could not be read: reasons <c>truncated</c> and <c>damaged</c>.</summary>
    public IReadOnlyList<LeftOut> LeftOut => _leftOut;

    /// <summary>Sentences about how the picture was treated, such as deinterlacing.</summary>
    public IReadOnlyList<string> Remarks => _remarks;

    internal void Add(LeftOut leftOut) => _leftOut.Add(leftOut);

    internal void Add(string remark) => _remarks.Add(remark);
}
