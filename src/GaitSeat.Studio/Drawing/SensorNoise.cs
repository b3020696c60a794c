using System.Numerics;
using System.Runtime.InteropServices;

namespace GaitSeat.Studio;

/// <summary>Adds the noise of a sensor to finished frames; fixed by seed and frame number.</summary>
internal sealed class SensorNoise
{
    private const int TableLength = 1 << 16;
    private readonly byte[] _plus = new byte[TableLength];
    private readonly byte[] _minus = new byte[TableLength];
    private readonly int _seed;
    private readonly bool _silent;

    public SensorNoise(int seed, double sd)
    {
        (_seed, _silent) = (seed, sd <= 0);
        var noise = new SeededNoise(seed, stream: 5);
        for (var i = 0; i < TableLength; i++)
        {
            var value = (int)Math.Round(Math.Clamp(sd * noise.Normal(), -60, 60));
            (_plus[i], _minus[i]) = ((byte)Math.Max(0, value), (byte)Math.Max(0, -value));
        }
    }

    public void Add(Span<byte> rgb, int frame)
    {
        if (_silent) return;
        var starts = new SeededNoise(_seed, stream: 1000 + frame);
        // Runs of the table from random places: no pattern stands still from frame to frame.
        for (var at = 0; at < rgb.Length;)
        {
            var length = Math.Min(rgb.Length - at, 2048 + (int)(starts.Next() % 2048));
            var start = (int)(starts.Next() % (ulong)(TableLength - length));
            AddRun(rgb.Slice(at, length), _plus.AsSpan(start, length), _minus.AsSpan(start, length));
            at += length;
        }
    }

    private static void AddRun(Span<byte> rgb, ReadOnlySpan<byte> plus, ReadOnlySpan<byte> minus)
    {
        var whole = MemoryMarshal.Cast<byte, Vector<byte>>(rgb);
        var more = MemoryMarshal.Cast<byte, Vector<byte>>(plus);
        var less = MemoryMarshal.Cast<byte, Vector<byte>>(minus);
        for (var i = 0; i < whole.Length && i < more.Length && i < less.Length; i++) whole[i] = Vector.SubtractSaturate(Vector.AddSaturate(whole[i], more[i]), less[i]);
        for (var i = whole.Length * Vector<byte>.Count; i < rgb.Length; i++) rgb[i] = (byte)Math.Clamp(Math.Min(255, rgb[i] + plus[i]) - minus[i], 0, 255);
    }
}
