using System.Buffers;

namespace GaitSeat.Model;

/// <summary>
/// One decoded picture: packed RGB, 8 bits a channel, rows top to bottom without padding
/// (<c>WidthPx * HeightPx * 3</c> bytes). The pixels are lent from a pool: dispose the frame to give them back, and do not keep <see cref="Rgb"/>.
/// </summary>
public sealed class Frame : IDisposable
{
    private byte[]? _pixels;

    public Frame(int index, double timeSeconds, int widthPx, int heightPx)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPx, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightPx, 1);
        Index = index;
        TimeSeconds = timeSeconds;
        WidthPx = widthPx;
        HeightPx = heightPx;
        _pixels = ArrayPool<byte>.Shared.Rent(checked(widthPx * heightPx * 3));
    }

    /// <summary>0-based position among the frames of this reading, after any thinning.</summary>
    public int Index { get; }

    /// <summary>Presentation time from the start of the clip's video stream, s; exact also where the frame rate varies.</summary>
    public double TimeSeconds { get; }

    public int WidthPx { get; }

    public int HeightPx { get; }

    /// <summary>The pixels: R, G, B of (0,0), then (1,0) and so on.</summary>
    /// <exception cref="ObjectDisposedException">The frame was given back.</exception>
    public Span<byte> Rgb => Memory.Span;

    /// <inheritdoc cref="Rgb"/>
    public Memory<byte> Memory =>
        (_pixels ?? throw new ObjectDisposedException(nameof(Frame))).AsMemory(0, WidthPx * HeightPx * 3);

    public void Dispose()
    {
        if (Interlocked.Exchange(ref _pixels, null) is { } pixels) ArrayPool<byte>.Shared.Return(pixels);
    }
}
