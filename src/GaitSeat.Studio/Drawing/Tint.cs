using System.Globalization;
using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Colours as red, green, blue from 0 to 1.</summary>
internal static class Tint
{
    /// <exception cref="ArgumentException">Not of the form <c>#rrggbb</c>.</exception>
    public static Vector3 Parse(string text)
    {
        if (text is not ['#', ..] || text.Length != 7 || !int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var rgb))
            throw new ArgumentException($"'{text}' is not a colour; write it as #rrggbb.", nameof(text));
        return new Vector3((rgb >> 16) & 255, (rgb >> 8) & 255, rgb & 255) / 255f;
    }

    public static Vector3 Mix(Vector3 a, Vector3 b, float share) => Vector3.Lerp(a, b, Math.Clamp(share, 0, 1));

    /// <summary>0 below <paramref name="from"/>, 1 above <paramref name="to"/>, smooth in between.</summary>
    public static float Step(float from, float to, float x)
    {
        var t = Math.Clamp((x - from) / (to - from), 0, 1);
        return t * t * (3 - 2 * t);
    }
}
