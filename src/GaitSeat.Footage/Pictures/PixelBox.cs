using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>A box of whole pixels that lies inside a picture and holds at least one.</summary>
internal readonly record struct PixelBox(int X, int Y, int Width, int Height)
{
    /// <summary>Every pixel the box touches, cut to the picture; null where none is left.</summary>
    public static PixelBox? Within(BoxPx box, int widthPx, int heightPx)
    {
        if (!double.IsFinite(box.X + box.Y + box.Width + box.Height)) return null;
        var left = (int)Math.Clamp(Math.Floor(box.X), 0, widthPx);
        var top = (int)Math.Clamp(Math.Floor(box.Y), 0, heightPx);
        var right = (int)Math.Clamp(Math.Ceiling(box.Right), 0, widthPx);
        var bottom = (int)Math.Clamp(Math.Ceiling(box.Bottom), 0, heightPx);
        return right > left && bottom > top ? new(left, top, right - left, bottom - top) : null;
    }
}
