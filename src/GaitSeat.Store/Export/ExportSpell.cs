using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A stride as far as exports need it.</summary>
internal sealed record ExportStride(int Number, double StartSeconds, double EndSeconds, double ScaleCmPerPx, IReadOnlyDictionary<string, object?> Row);

/// <summary>A spell with its strides.</summary>
internal sealed record ExportSpell(int Number, Facing Facing, double StartSeconds, double EndSeconds, IReadOnlyList<ExportStride> Strides)
{
    /// <summary>By number.</summary>
    internal static IReadOnlyList<ExportSpell> Read(DatasetQuery query, string clipKey, DatasetRun run)
    {
        var where = $"WHERE clip_key = {SqlText.Literal(clipKey)} AND {run.Where}";
        var strides = query.Query($"SELECT * FROM strides {where} ORDER BY spell, stride").ToLookup(r => (int)r["spell"]!);
        return
        [
            .. query.Query($"SELECT spell, facing, start_s, end_s FROM spells {where} ORDER BY spell").Select(r => new ExportSpell(
                (int)r["spell"]!,
                (string?)r["facing"] switch { "left" => Facing.Left, "right" => Facing.Right, _ => Facing.Unknown },
                (double)r["start_s"]!,
                (double)r["end_s"]!,
                [.. strides[(int)r["spell"]!].Select(s => new ExportStride((int)s["stride"]!, (double)s["start_s"]!, (double)s["end_s"]!, s["scale_cm_per_px"] as double? ?? double.NaN, s))])),
        ];
    }
}
