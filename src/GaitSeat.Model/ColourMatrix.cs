namespace GaitSeat.Model;

/// <summary>
/// How brightness and colour differences (Y, Cb, Cr, 8 bits, limited range: black at 16, white at 235, no colour at 128) turn into red, green and blue:
/// the share red and blue have in brightness; green has the rest.
/// </summary>
public readonly record struct ColourMatrix(float Red, float Blue)
{
    /// <summary>Brightness of black in limited range.</summary>
    public const float Black = 16;

    /// <summary>From black to white, in steps of brightness.</summary>
    public const float BlackToWhite = 219;

    /// <summary>A colour difference of none.</summary>
    public const float NoColour = 128;

    /// <summary>From the least to the greatest colour difference.</summary>
    public const float ColourSpan = 224;

    /// <summary>ITU-R BT.601-7, 2.5.1.</summary>
    public static ColourMatrix Bt601 { get; } = new(0.299f, 0.114f);

    /// <summary>ITU-R BT.709-6, 3.2.</summary>
    public static ColourMatrix Bt709 { get; } = new(0.2126f, 0.0722f);

    /// <summary>ITU-R BT.2020-2, table 4, non-constant luminance.</summary>
    public static ColourMatrix Bt2020 { get; } = new(0.2627f, 0.0593f);

    public float Green => 1 - Red - Blue;

    /// <param name="name">FFmpeg's name of a colour space, such as <c>bt709</c>. What is not said is BT.601, as FFmpeg's own scaler takes it.</param>
    public static ColourMatrix Named(string name) => name switch
    {
        "bt709" => Bt709,
        "bt2020nc" or "bt2020c" => Bt2020,
        _ => Bt601,
    };
}
