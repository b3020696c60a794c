using SkiaSharp;

namespace GaitSeat.Footage.Pictures;

/// <summary>The shipped typefaces (Inter, SIL Open Font License 1.1): the machine's own fonts differ from place to place, and a server may have none.</summary>
internal static class PictureFonts
{
    public static SKTypeface Regular { get; } = Load("Inter-Regular.otf");

    public static SKTypeface SemiBold { get; } = Load("Inter-SemiBold.otf");

    private static SKTypeface Load(string file)
    {
        var name = $"GaitSeat.Fonts.{file}";
        using var stream = typeof(PictureFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font '{name}' is missing from the assembly; rebuild it.");
        return SKTypeface.FromStream(stream) ?? throw new InvalidOperationException($"The font '{name}' could not be read; rebuild the assembly.");
    }
}
