using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Reads the spells of one run back, each with its strides and what the sheet says of its clip.</summary>
public static class SpellReader
{
    private const string Shared = "clip_key, clip_file, rider, horse, session_date, rein, software_version, schema_version";

    /// <returns>Spells of every gait, by clip key and number.</returns>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    public static IReadOnlyList<RiddenSpell> Read(DatasetQuery query, DatasetRun run)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(run);
        var strides = Strides(query, run);
        var extra = query.Query($"SELECT clip_key, extra FROM clips WHERE {run.Where}").ToDictionary(r => (string)r["clip_key"]!, r => ExtraOf((string?)r["extra"]), StringComparer.Ordinal);
        var sql = $"SELECT {Shared}, spell, gait, facing, start_s, end_s, confidence, bounce_hz, bounce_cm, bounce_pct_leg, strides_kept, strides_dropped, drift_creep_cm_per_stride, drift_creep_cm_per_stride_se, stride_duration_cv_pct FROM spells WHERE {run.Where} ORDER BY clip_key, spell";
        return [.. query.Query(sql).Select(r => ToSpell(r, run, strides, extra))];
    }

    private static RiddenSpell ToSpell(IReadOnlyDictionary<string, object?> r, DatasetRun run, Dictionary<SpellKey, List<Stride>> strides, Dictionary<string, Dictionary<string, string>> extra)
    {
        var provenance = new Provenance((string)r["clip_key"]!, (string)r["clip_file"]!, run.PipelineHash, run.ModelHash, (string)r["software_version"]!, (int)r["schema_version"]!);
        var spell = new Spell(
            (int)r["spell"]!, VerdictWords.Of<Gait>((string)r["gait"]!) ?? Gait.Unknown, FacingOf((string?)r["facing"]), Real(r, "start_s"), Real(r, "end_s"), Real(r, "confidence"),
            Real(r, "bounce_hz"), Real(r, "bounce_cm"), Real(r, "bounce_pct_leg"), (int)r["strides_kept"]!, (int)r["strides_dropped"]!,
            new(Real(r, "drift_creep_cm_per_stride"), Real(r, "drift_creep_cm_per_stride_se")), Real(r, "stride_duration_cv_pct"));
        var own = strides.GetValueOrDefault(new(provenance.ClipKey, spell.Number)) ?? [];
        return new(provenance, (string?)r["rider"], (string?)r["horse"], (DateOnly?)r["session_date"], (string?)r["rein"], spell, own, extra.GetValueOrDefault(provenance.ClipKey) ?? []);
    }

    private static Dictionary<SpellKey, List<Stride>> Strides(DatasetQuery query, DatasetRun run)
    {
        var columns = string.Join(", ", MeasureCatalogue.All.SelectMany(m => new[] { m.Column, m.StandardErrorColumn }));
        var sql = $"SELECT clip_key, spell, stride, facing, start_s, top_s, end_s, confidence, quality, {columns} FROM strides WHERE {run.Where} ORDER BY clip_key, spell, stride";
        var strides = new Dictionary<SpellKey, List<Stride>>();
        query.Each(sql, r =>
        {
            var key = new SpellKey(r.GetString(0), r.GetInt32(1));
            if (!strides.TryGetValue(key, out var list)) strides[key] = list = [];
            list.Add(StrideOf(r));
        });
        return strides;
    }

    /// <summary>By place, not by name: a season has a hundred thousand strides of seventy columns.</summary>
    private static Stride StrideOf(System.Data.Common.DbDataReader r)
    {
        const int FirstMeasure = 9;
        double At(int column) => r.IsDBNull(column) ? double.NaN : r.GetDouble(column);
        var measures = new MeasureSet();
        for (var m = 0; m < MeasureCatalogue.All.Count; m++) measures[MeasureCatalogue.All[m].Measure] = new(At(FirstMeasure + 2 * m), At(FirstMeasure + 2 * m + 1));
        return new(r.GetInt32(1), r.GetInt32(2), FacingOf(r.IsDBNull(3) ? null : r.GetString(3)), At(4), At(5), At(6), At(7), r.GetString(8), measures);
    }

    private static Facing FacingOf(string? term) => term is null ? Facing.Unknown : VerdictWords.Of<Facing>(term) ?? Facing.Unknown;

    private static double Real(IReadOnlyDictionary<string, object?> row, string column) => (double?)row[column] ?? double.NaN;

    private static Dictionary<string, string> ExtraOf(string? json) => json is null ? [] : JsonSerializer.Deserialize<Dictionary<string, string>>(json) ?? [];
}
