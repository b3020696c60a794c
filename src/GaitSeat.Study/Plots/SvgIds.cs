using System.Text.RegularExpressions;

namespace GaitSeat.Study.Plots;

/// <summary>Skia numbers the clips of its SVGs through the life of the process (<c>cl_46</c>); numbered anew from 0, the same plot gives the same bytes.</summary>
internal static partial class SvgIds
{
    public static string Renumber(string svg)
    {
        var numbers = new Dictionary<string, int>();
        return ClipId().Replace(svg, match =>
        {
            if (!numbers.TryGetValue(match.Value, out var number)) numbers[match.Value] = number = numbers.Count;
            return $"cl_{number}";
        });
    }

    /// <summary>Only where it is an id or a reference to one, not in a title that looks alike.</summary>
    [GeneratedRegex("""(?<=id="|url\(#)cl_[0-9a-f]+(?="|\))""")]
    private static partial Regex ClipId();
}
