using System.Buffers;

namespace GaitSeat.Model;

/// <summary>
/// One decoded picture, rows top to bottom without padding, 8 bits a value: either packed RGB (<c>WidthPx * HeightPx * 3</c> bytes) or, as video is coded, a plane of
/// brightness and two planes of colour difference at half the width and height (4:2:0, limited range, half the bytes).
/// The pixels are lent from a pool: dispose the frame to give them back, and do not keep its spans.
/// </summary>
public sealed class Frame : IDisposable
{
    private byte[]? _pixels;

    /// <summary>A picture in RGB.</summary>
    public Frame(int index, double timeSeconds, int widthPx, int heightPx)
        : this(index, timeSeconds, widthPx, heightPx, null)
    {
    }

    /// <param name="colours">Null for RGB; otherwise the planes' meaning, and both sides must be even.</param>
    public Frame(int index, double timeSeconds, int widthPx, int heightPx, ColourMatrix? colours)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPx, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightPx, 1);
        if (colours is not null && (widthPx % 2 != 0 || heightPx % 2 != 0))
            throw new ArgumentException($"a picture in planes has even sides, not {widthPx} x {heightPx} px", nameof(colours));
        Index = index;
        TimeSeconds = timeSeconds;
        WidthPx = widthPx;
        HeightPx = heightPx;
        Colours = colours;
        _pixels = ArrayPool<byte>.Shared.Rent(Bytes);
    }

    /// <summary>0-based position among the frames of this reading, after any thinning.</summary>
    public int Index { get; }

    /// <summary>Presentation time from the start of the clip's video stream, s; exact also where the frame rate varies.</summary>
    public double TimeSeconds { get; }

    public int WidthPx { get; }

    public int HeightPx { get; }

    /// <summary>What the planes mean; null where the picture is in RGB.</summary>
    public ColourMatrix? Colours { get; }

    /// <summary>Size of the whole picture.</summary>
    public int Bytes => Colours is null ? checked(Area * 3) : Area + (Area / 2);

    /// <summary>All bytes: RGB, or brightness, blue difference, red difference one after the other.</summary>
    /// <exception cref="ObjectDisposedException">The frame was given back.</exception>
    public Memory<byte> Memory => (_pixels ?? throw new ObjectDisposedException(nameof(Frame))).AsMemory(0, Bytes);

    /// <summary>The pixels: R, G, B of (0,0), then (1,0) and so on.</summary>
    /// <exception cref="InvalidOperationException">The picture is in planes.</exception>
    public Span<byte> Rgb => Colours is null ? Memory.Span : throw new InvalidOperationException("This picture is in planes of brightness and colour difference, not in RGB.");

    /// <summary>Brightness, <c>WidthPx * HeightPx</c> bytes.</summary>
    /// <exception cref="InvalidOperationException">The picture is in RGB.</exception>
    public Span<byte> Brightness => Plane(0, Area);

    /// <summary>Blue difference (Cb), <c>WidthPx / 2 * HeightPx / 2</c> bytes.</summary>
    /// <exception cref="InvalidOperationException">The picture is in RGB.</exception>
    public Span<byte> BlueDifference => Plane(Area, Area / 4);

    /// <summary>Red difference (Cr), <c>WidthPx / 2 * HeightPx / 2</c> bytes.</summary>
    /// <exception cref="InvalidOperationException">The picture is in RGB.</exception>
    public Span<byte> RedDifference => Plane(Area + (Area / 4), Area / 4);

    private int Area => checked(WidthPx * HeightPx);

    public void Dispose()
    {
        if (Interlocked.Exchange(ref _pixels, null) is { } pixels) ArrayPool<byte>.Shared.Return(pixels);
    }

    private Span<byte> Plane(int from, int length) =>
        Colours is null ? throw new InvalidOperationException("This picture is in RGB, not in planes.") : Memory.Span.Slice(from, length);
}
