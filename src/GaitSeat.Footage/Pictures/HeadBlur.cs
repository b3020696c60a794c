using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>
/// Makes heads unrecognisable, for good: each box is reduced to <see cref="CellsAcross"/> x <see cref="CellsAcross"/> mean colours, which are then blended.
/// What is written depends on those means alone, so nothing finer can be won back from the frame.
/// </summary>
public static class HeadBlur
{
    /// <summary>Mean colours along each side of a head. Four: a face box of 4 x 4 is far below the some 16 px across at which people are still told apart; common practice, no source.</summary>
    public const int CellsAcross = 4;

    /// <summary>Blurs the boxes in the frame's own memory. Boxes may reach outside the picture or lie outside it.</summary>
    public static void Apply(Frame frame, IReadOnlyList<BoxPx> heads)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(heads);
        foreach (var head in heads)
        {
            if (PixelBox.Within(head, frame.WidthPx, frame.HeightPx) is { } box) Blur(frame, box);
        }
    }

    private static void Blur(Frame frame, PixelBox box)
    {
        var cells = new ColourGrid(Math.Min(CellsAcross, box.Width), Math.Min(CellsAcross, box.Height));
        cells.Average(frame, box);
        cells.Spread(frame, box);
    }
}
