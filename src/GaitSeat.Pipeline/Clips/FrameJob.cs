using GaitSeat.Model;

namespace GaitSeat.Pipeline.Clips;

/// <summary>One frame on its way past two readers (flow in order, body points in any order); the pixels go back when both are done.</summary>
internal sealed class FrameJob(int number, Frame frame, BoxPx? rider, BoxPx? horse, int? secondTurn, bool beginsSpan)
{
    private int _readers = 2;

    /// <summary>0-based position among all followed frames of the clip.</summary>
    public int Number { get; } = number;

    public Frame Frame { get; } = frame;

    public BoxPx? Rider { get; } = rider;

    public BoxPx? Horse { get; } = horse;

    /// <summary>Which reading of the second body-point model this is; null where it is not asked.</summary>
    public int? SecondTurn { get; } = secondTurn;

    /// <summary>Whether it is the first of its span: the frame before it, if any, is of another time.</summary>
    public bool BeginsSpan { get; } = beginsSpan;

    public void Done()
    {
        if (Interlocked.Decrement(ref _readers) == 0) Frame.Dispose();
    }
}
