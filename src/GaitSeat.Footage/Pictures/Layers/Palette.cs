using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The colours of the pictures: three accents from the Okabe and Ito set (told apart with any colour vision), on ink and paper.</summary>
internal static class Palette
{
    /// <summary>The seat: hip, thigh, sit.</summary>
    public static readonly SKColor Seat = new(0xE6, 0x9F, 0x00);

    /// <summary>The straight line to compare with: plumb line, top.</summary>
    public static readonly SKColor Plumb = new(0x56, 0xB4, 0xE9);

    /// <summary>The foot on the stirrup.</summary>
    public static readonly SKColor Foot = new(0x00, 0xB8, 0x8A);

    public static readonly SKColor Paper = new(0xF7, 0xF5, 0xF0);

    public static readonly SKColor Muted = new(0xF7, 0xF5, 0xF0, 0x8C);

    public static readonly SKColor Ink = new(0x14, 0x1C, 0x24);

    /// <summary>Ink one can see through: casing of lines, panels.</summary>
    public static readonly SKColor Casing = new(0x14, 0x1C, 0x24, 0xB0);

    public static readonly SKColor Panel = new(0x14, 0x1C, 0x24, 0xC8);
}
