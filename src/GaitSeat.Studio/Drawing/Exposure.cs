namespace GaitSeat.Studio;

/// <summary>Makes a picture darker, as too little light does: before the sensor's noise, which then stands out.</summary>
internal sealed class Exposure(double light)
{
    private readonly byte[] _darker = [.. Enumerable.Range(0, 256).Select(v => (byte)Math.Clamp(Math.Round(v * light), 0, 255))];

    public void Dim(Span<byte> rgb)
    {
        if (light == 1) return;
        for (var i = 0; i < rgb.Length; i++) rgb[i] = _darker[rgb[i]];
    }
}
