using System.Text.Json;

namespace GaitSeat.Studio;

/// <summary>Reads and writes the truth beside a clip: <c>NAME.truth.json</c> and <c>NAME.truth.csv</c>.</summary>
public static class TruthFile
{
    private const string JsonEnding = ".truth.json";

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull,
    };

    /// <summary>
    /// Reads the truth and, where it stands beside, the per-frame table. Fields we do not know are passed over, so that files of
    /// another renderer can be read; a missing hip-relative drift offset is worked out from the points in space.
    /// </summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="InvalidDataException">The file is not a truth file; says what is missing.</exception>
    public static ClipTruth Read(string jsonPath)
    {
        ArgumentException.ThrowIfNullOrEmpty(jsonPath);
        if (!File.Exists(jsonPath)) throw new FileNotFoundException($"No truth file '{jsonPath}'.", jsonPath);
        ClipTruth truth;
        try
        {
            using var stream = File.OpenRead(jsonPath);
            truth = JsonSerializer.Deserialize<ClipTruth>(stream, Json) ?? throw new InvalidDataException($"'{jsonPath}' holds no truth.");
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"'{jsonPath}' is not a truth file: {e.Message}", e);
        }

        var csvPath = CsvPath(jsonPath);
        if (!File.Exists(csvPath)) return truth;
        var rows = TruthTable.Read(csvPath);
        return truth with { FrameRows = rows, Strides = [.. truth.Strides.Select(s => WithHipOffset(s, rows))] };
    }

    /// <summary>Writes both files, replacing older ones.</summary>
    public static void Write(string jsonPath, ClipTruth truth)
    {
        ArgumentException.ThrowIfNullOrEmpty(jsonPath);
        ArgumentNullException.ThrowIfNull(truth);
        File.WriteAllText(jsonPath, JsonSerializer.Serialize(truth, Json) + "\n");
        TruthTable.Write(CsvPath(jsonPath), truth.FrameRows);
    }

    /// <summary>Where the truth of a clip stands: its name with <c>.truth.json</c> in the folder given.</summary>
    public static string PathFor(string folder, string clipName) => Path.Combine(folder, clipName + JsonEnding);

    private static string CsvPath(string jsonPath) =>
        jsonPath.EndsWith(JsonEnding, StringComparison.Ordinal)
            ? jsonPath[..^JsonEnding.Length] + ".truth.csv"
            : throw new ArgumentException($"A truth file ends in '{JsonEnding}'; found '{jsonPath}'.", nameof(jsonPath));

    private static StrideTruth WithHipOffset(StrideTruth stride, IReadOnlyList<FrameTruth> rows)
    {
        if (stride.DriftOffsetHipCm is not null) return stride;
        for (var i = 1; i < rows.Count; i++)
        {
            var (a, b) = (rows[i - 1], rows[i]);
            if (stride.SitS < a.TimeSeconds || stride.SitS > b.TimeSeconds) continue;
            if (OffsetCm(a) is not { } atA || OffsetCm(b) is not { } atB) return stride;
            var share = (stride.SitS - a.TimeSeconds) / (b.TimeSeconds - a.TimeSeconds);
            return stride with { DriftOffsetHipCm = atA + share * (atB - atA) };
        }

        return stride;
    }

    private static double? OffsetCm(FrameTruth row) =>
        row["tread"].Metres is { } tread && row["hip"].Metres is { } hip ? 100 * (tread.Forward - hip.Forward) : null;
}
