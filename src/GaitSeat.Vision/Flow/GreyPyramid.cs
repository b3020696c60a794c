using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// A picture in brightness at full working size and halved again and again. Positions keep their meaning (pixel (0,0) covers 0..1):
/// a point at x on level 0 is at x / 2^n on level n.
/// </summary>
internal sealed class GreyPyramid
{
    // Below this a 16 px window no longer tells places apart.
    private const int SmallestSidePx = 32;

    private readonly GreyReducer _reducer;
    private readonly float[] _blurredRow;

    public GreyPyramid(GreyReducer reducer, int levels)
    {
        _reducer = reducer;
        var list = new List<GreyPicture> { new(reducer.Width, reducer.Height) };
        while (list.Count < levels && Math.Min(list[^1].Width, list[^1].Height) >= 2 * SmallestSidePx)
        {
            list.Add(new GreyPicture(list[^1].Width / 2, list[^1].Height / 2));
        }

        Levels = [.. list];
        _blurredRow = new float[reducer.Width];
    }

    public GreyPicture[] Levels { get; }

    public int Coarsest => Levels.Length - 1;

    public void Fill(Frame frame)
    {
        _reducer.Reduce(frame, Levels[0]);
        for (var i = 1; i < Levels.Length; i++) Halve(Levels[i - 1], Levels[i]);
    }

    /// <summary>Half size with the even binomial kernel 1 3 3 1: it keeps the half-pixel centring and passes little that would alias.</summary>
    private void Halve(GreyPicture from, GreyPicture to)
    {
        var blurred = _blurredRow.AsSpan(0, from.Width);
        for (var y = 0; y < to.Height; y++)
        {
            BinomialRow.Blend(
                from.Row(Math.Max((2 * y) - 1, 0)), from.Row(2 * y),
                from.Row((2 * y) + 1), from.Row(Math.Min((2 * y) + 2, from.Height - 1)), blurred);
            BinomialRow.Halve(blurred, to.Row(y));
        }
    }
}
