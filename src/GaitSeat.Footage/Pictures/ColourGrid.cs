using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>A few mean colours of a part of a picture, and that part painted anew from them.</summary>
internal sealed class ColourGrid(int columns, int rows)
{
    private readonly float[] _means = new float[columns * rows * 3];

    /// <summary>Takes the mean colour of each cell.</summary>
    public void Average(Frame frame, PixelBox box)
    {
        var rgb = frame.Rgb;
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var (x0, x1) = (box.X + column * box.Width / columns, box.X + (column + 1) * box.Width / columns);
                var (y0, y1) = (box.Y + row * box.Height / rows, box.Y + (row + 1) * box.Height / rows);
                long r = 0, g = 0, b = 0;
                for (var y = y0; y < y1; y++)
                {
                    var line = rgb.Slice((y * frame.WidthPx + x0) * 3, (x1 - x0) * 3);
                    for (var i = 0; i < line.Length; i += 3)
                    {
                        r += line[i];
                        g += line[i + 1];
                        b += line[i + 2];
                    }
                }

                Set(column, row, r, g, b, (float)(x1 - x0) * (y1 - y0));
            }
        }
    }

    /// <summary>Paints the box from the means, blended linearly from cell centre to cell centre.</summary>
    public void Spread(Frame frame, PixelBox box)
    {
        var rgb = frame.Rgb;
        for (var y = 0; y < box.Height; y++)
        {
            var (row, rowShare) = Cell(y, box.Height, rows);
            for (var x = 0; x < box.Width; x++)
            {
                var (column, columnShare) = Cell(x, box.Width, columns);
                var at = ((box.Y + y) * frame.WidthPx + box.X + x) * 3;
                for (var channel = 0; channel < 3; channel++)
                {
                    var upper = Blend(column, row, columnShare, channel);
                    var lower = Blend(column, Math.Min(row + 1, rows - 1), columnShare, channel);
                    rgb[at + channel] = (byte)(upper + (lower - upper) * rowShare + 0.5f);
                }
            }
        }
    }

    private static (int Cell, float Share) Cell(int position, int length, int cells)
    {
        var at = Math.Clamp((position + 0.5f) * cells / length - 0.5f, 0, cells - 1);
        return ((int)at, at - (int)at);
    }

    private float Blend(int column, int row, float share, int channel)
    {
        var left = _means[(row * columns + column) * 3 + channel];
        var right = _means[(row * columns + Math.Min(column + 1, columns - 1)) * 3 + channel];
        return left + (right - left) * share;
    }

    private void Set(int column, int row, float r, float g, float b, float count)
    {
        var at = (row * columns + column) * 3;
        (_means[at], _means[at + 1], _means[at + 2]) = (r / count, g / count, b / count);
    }
}
