using System.Globalization;
using GaitSeat.Store;

namespace GaitSeat.Cli.Marks;

/// <summary>Values by hand as a study's <c>values_file</c>: one line a stride; what was not marked is empty.</summary>
internal static class HandValuesFile
{
    public static void Write(string path, HandValues values)
    {
        string[] head = ["clip_key", "spell", "stride", .. HandValues.Columns, "hand_frames", "hand_judges"];
        File.WriteAllLines(path, values.Lines.Select(Line).Prepend(string.Join(',', head)));
    }

    private static string Line(HandValueLine line) => string.Join(',',
        [line.Spell.ClipKey, Text(line.Spell.SpellNumber), Text(line.Stride), .. line.Values.Select(v => double.IsFinite(v) ? v.ToString("0.###", CultureInfo.InvariantCulture) : ""), Text(line.Frames), Text(line.Judges)]);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
