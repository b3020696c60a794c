using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// Picks places worth following: in each square of a grid the one with the best texture (smaller eigenvalue of the structure tensor,
/// Shi and Tomasi 1994, from memory). A plain edge counts a little, for it still shows the motion across itself.
/// </summary>
internal sealed class PointPicker(double minGradient, double edgeShare)
{
    private readonly TextureMap _texture = new();

    /// <summary>Places in level-0 px.</summary>
    /// <param name="cellPx">Side of a square of the grid, level-0 px.</param>
    public void Pick(GreyPicture picture, int level, Region region, double cellPx, List<PointPx> places)
    {
        places.Clear();
        var scale = 1 << level;
        var bounds = Bounds(picture, region, scale);
        if (bounds is not { } b) return;
        _texture.Fill(picture, b.Left, b.Top, b.Width, b.Height);
        var cell = Math.Max(2, (int)Math.Round(cellPx / scale));
        for (var top = 0; top < _texture.Height; top += cell)
        {
            for (var left = 0; left < _texture.Width; left += cell)
            {
                if (Best(left, top, cell, region, scale) is { } place) places.Add(place);
            }
        }
    }

    private PointPx? Best(int left, int top, int cell, Region region, int scale)
    {
        PointPx? best = null;
        var bestScore = 0.0;
        for (var y = top; y < Math.Min(top + cell, _texture.Height); y++)
        {
            for (var x = left; x < Math.Min(left + cell, _texture.Width); x++)
            {
                var tensor = _texture.At(x, y);
                // The smaller eigenvalue is at most half the trace, the larger at most all of it: most places are out before a root is taken.
                if (tensor.Trace * (0.5 + edgeShare) <= bestScore || tensor.Trace < minGradient * minGradient) continue;
                var (large, small) = tensor.Eigenvalues;
                var score = small + (edgeShare * large);
                if (score <= bestScore || large < minGradient * minGradient) continue;
                var place = new PointPx((_texture.Left + x + 0.5) * scale, (_texture.Top + y + 0.5) * scale);
                if (!region.Contains(place.X, place.Y)) continue;
                (best, bestScore) = (place, score);
            }
        }

        return best;
    }

    private static (int Left, int Top, int Width, int Height)? Bounds(GreyPicture picture, Region region, int scale)
    {
        const int border = (WindowMatcher.Side / 2) + 2;
        var left = Math.Max(border, (int)Math.Ceiling(region.Inside.X / scale));
        var top = Math.Max(border, (int)Math.Ceiling(region.Inside.Y / scale));
        var width = Math.Min(picture.Width - border, (int)(region.Inside.Right / scale)) - left;
        var height = Math.Min(picture.Height - border, (int)(region.Inside.Bottom / scale)) - top;
        return width < 1 || height < 1 ? null : (left, top, width, height);
    }
}
