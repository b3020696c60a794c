using GaitSeat.Model;

namespace GaitSeat.Study.Report;

/// <summary>A column as it is called in a sentence, and its unit.</summary>
internal readonly record struct ColumnTerm(string Name, string Unit)
{
    private static readonly (string Ending, string Unit)[] Endings =
        [("_pct_leg", "% of leg length"), ("_pct", "%"), ("_cm_s", "cm/s"), ("_cm", "cm"), ("_deg", "deg"), ("_s", "s"), ("_hz", "Hz"), ("_px", "px"), ("_hole", "holes")];

    public static ColumnTerm Of(string column)
    {
        var (ending, unit) = Endings.FirstOrDefault(e => column.EndsWith(e.Ending, StringComparison.Ordinal));
        var name = ending is null or "_hole" ? column : column[..^ending.Length];
        var known = MeasureCatalogue.All.FirstOrDefault(m => m.Column == column);
        return new(name.Replace('_', ' '), known?.Unit ?? unit ?? "");
    }

    /// <summary>Name with its unit, for an axis or a head.</summary>
    public string Label => Unit.Length > 0 ? $"{Name}, {Unit}" : Name;

    public string With(string number) => Unit.Length == 0 ? number : $"{number} {Unit}";
}
