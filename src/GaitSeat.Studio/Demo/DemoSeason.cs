using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using GaitSeat.Footage;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The season of an invented riding school: which clips there are, and the folder of clips with its session sheet made from it.</summary>
public sealed class DemoSeason
{
    /// <summary>Where the truth goes, so that it is not taken for clips.</summary>
    public const string TruthFolder = "truth";

    public const string SheetFile = "session-sheet.csv";

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false) },
    };

    private DemoSeason(Definition definition)
    {
        Name = definition.Name;
        Riders = definition.Riders;
        Judged = definition.Judged;
        JudgedClips = definition.Judged is { } plan ? JudgedSeason.Of(plan, definition.Seed) : [];
        Clips = [.. Riders.SelectMany((rider, r) => rider.Sessions.Select((session, s) => ClipOf(definition.Seed, rider, session, r, s)))];
    }

    public string Name { get; }

    public IReadOnlyList<DemoRider> Riders { get; }

    public IReadOnlyList<DemoClip> Clips { get; }

    /// <summary>The plan of the judged season; null where the definition has none.</summary>
    public JudgedPlan? Judged { get; }

    /// <summary>The clips of the judged season, by rider and day; none where the definition has none. They are not drawn, see <see cref="UndrawnClip"/>.</summary>
    public IReadOnlyList<JudgedClip> JudgedClips { get; }

    /// <summary>Reads a season's definition (JSON, snake_case, comments allowed).</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="InvalidDataException">The definition is wrong; says where, and what is allowed.</exception>
    public static DemoSeason Load(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (!File.Exists(path)) throw new FileNotFoundException($"No season definition '{path}'.", path);
        try
        {
            var definition = JsonSerializer.Deserialize<Definition>(File.ReadAllText(path), Json)
                ?? throw new InvalidDataException($"'{path}' defines no season.");
            var season = new DemoSeason(definition);
            foreach (var clip in season.Clips) _ = new Ride(clip.Script);
            return season;
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"'{path}' line {e.LineNumber + 1}: {e.Message}", e);
        }
        catch (ArgumentException e)
        {
            throw new InvalidDataException($"'{path}': {e.Message}", e);
        }
    }

    /// <inheritdoc cref="MakeAsync(FfmpegTools, string, IProgress{DemoProgress}?, CancellationToken)"/>
    public Task MakeAsync(string folder, IProgress<DemoProgress>? progress, CancellationToken ct) =>
        MakeAsync(FfmpegTools.Locate(), folder, progress, ct);

    /// <summary>
    /// Makes the clips, the session sheet beside them and the truth below. A clip whose truth and script are there already
    /// and the same is left as it is, so a second call does nothing and an interrupted one goes on.
    /// </summary>
    public async Task MakeAsync(FfmpegTools tools, string folder, IProgress<DemoProgress>? progress, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(tools);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        var truthFolder = Path.Combine(folder, TruthFolder);
        Directory.CreateDirectory(truthFolder);
        var renderer = new StudioRenderer(tools);
        var rows = new List<string> { "clip_file,session_date,rider,horse,rider_stature_cm,stirrup_hole,leather_cm,rein,consent,note" };
        for (var i = 0; i < Clips.Count; i++)
        {
            var clip = Clips[i];
            var made = !IsThere(clip, folder);
            if (made)
            {
                await renderer.RenderAsync(clip.Script, folder, truthFolder, clip.Name, ct);
                await File.WriteAllTextAsync(ScriptPath(folder, clip), ScriptText(clip), ct);
            }

            rows.Add(SheetRow(clip));
            progress?.Report(new(i + 1, Clips.Count, clip.Name, made));
        }

        var sheet = Path.Combine(folder, SheetFile);
        var text = string.Join('\n', rows) + "\n";
        if (!File.Exists(sheet) || await File.ReadAllTextAsync(sheet, ct) != text) await File.WriteAllTextAsync(sheet, text, ct);
    }

    private static DemoClip ClipOf(int seed, DemoRider rider, DemoSession session, int riderIndex, int sessionIndex)
    {
        const int PerRider = 100;
        var script = session.Clip with
        {
            Seed = seed + PerRider * (riderIndex + 1) + sessionIndex,
            StatureCm = rider.StatureCm,
            ThighOverStature = rider.ThighOverStature,
            ShankOverStature = rider.ShankOverStature,
            Look = rider.Look,
        };
        return new(FormattableString.Invariant($"{rider.Name.ToLowerInvariant()}-{session.Date:yyyy-MM-dd}"), rider, session, script);
    }

    private static string SheetRow(DemoClip clip)
    {
        // Measured with a tape from bar to tread: to half a centimetre.
        var leatherCm = Math.Round(200 * new Ride(clip.Script).LeatherM) / 2;
        // The camera stands inside the track, so the side it sees is the inside.
        var rein = clip.Script.Facing == Facing.Right ? "right" : "left";
        string[] cells =
        [
            clip.Name + ".mp4", clip.Session.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), clip.Rider.Name, clip.Rider.Horse,
            Number(clip.Rider.StatureCm), Number(clip.Session.StirrupHole), Number(leatherCm), rein, clip.Session.Consent ? "yes" : "no", clip.Session.Note ?? "",
        ];
        return string.Join(',', cells.Select(Cell));
    }

    private static string Number(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Cell(string text) =>
        text.AsSpan().IndexOfAny(",\"\n") >= 0 ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private static bool IsThere(DemoClip clip, string folder) =>
        File.Exists(Path.Combine(folder, clip.Name + ".mp4"))
        && File.Exists(TruthFile.PathFor(Path.Combine(folder, TruthFolder), clip.Name))
        && File.Exists(ScriptPath(folder, clip))
        && File.ReadAllText(ScriptPath(folder, clip)) == ScriptText(clip);

    private static string ScriptPath(string folder, DemoClip clip) => Path.Combine(folder, TruthFolder, clip.Name + ".script.json");

    // The drawing's version is part of it: clips of an older drawing are made anew.
    private static string ScriptText(DemoClip clip) => JsonSerializer.Serialize(new { StudioRenderer.DrawingVersion, clip.Script }, Json) + "\n";

    private sealed record Definition
    {
        public required string Name { get; init; }

        public required int Seed { get; init; }

        public required IReadOnlyList<DemoRider> Riders { get; init; }

        public JudgedPlan? Judged { get; init; }
    }
}
