using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>A rendered clip of the shared folder with its truth file; the test is skipped where either, or FFmpeg, is missing.</summary>
internal sealed class RenderedRide
{
    private static readonly string[] BodyColumns = ["ear", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "heel", "toe", "helmet_top"];

    private readonly string _clip;
    private readonly Dictionary<string, double[]> _columns;

    public RenderedRide(string name)
    {
        _clip = Find(Path.Combine("footage", "truth", name + ".mp4"));
        var lines = File.ReadAllLines(Path.ChangeExtension(_clip, ".truth.csv"));
        var rows = lines.Skip(1).Select(l => l.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        _columns = lines[0].Split(',').Select((column, i) => (column, i)).ToDictionary(c => c.column, c => rows.Select(r => r[c.i]).ToArray());
    }

    public double[] this[string column] => _columns[column];

    /// <summary>Rider's box from the true points; no horse box, no seat: the poorest hints the scout would give.</summary>
    public FlowHints Hints(int frame)
    {
        var x = BodyColumns.Select(c => this[c + "_x"][frame]).ToArray();
        var y = BodyColumns.Select(c => this[c + "_y"][frame]).ToArray();
        return this["rider_full_in_frame"][frame] > 0
            ? new FlowHints(new BoxPx(x.Min(), y.Min(), x.Max() - x.Min(), y.Max() - y.Min()), null, null)
            : FlowHints.None;
    }

    public async Task<List<FlowStep>> FollowAsync(int frames, CancellationToken ct)
    {
        var tools = Tools();
        var clip = await new ClipProbe(tools, new ProbeSettings()).ProbeAsync(_clip, ct);
        var flow = new PatchFlow(new FlowSettings());
        var steps = new List<FlowStep>();
        await foreach (var frame in new FrameReader(tools).ReadAsync(clip, new ReadSettings(), ct))
        {
            using (frame) steps.Add(flow.Next(frame, Hints(steps.Count)));
            if (steps.Count == frames) break;
        }

        return steps;
    }

    private static FfmpegTools Tools()
    {
        try
        {
            return FfmpegTools.Locate();
        }
        catch (FfmpegNotFoundException e)
        {
            Assert.Skip(e.Message);
            throw;
        }
    }

    private static string Find(string below)
    {
        List<string> roots = Environment.GetEnvironmentVariable("GAITSEAT_SHARED") is { Length: > 0 } named ? [named] : [];
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            roots.Add(Path.Combine(folder.FullName, "shared"));
        }

        var found = roots.Select(r => Path.Combine(r, below)).FirstOrDefault(File.Exists);
        if (found is null) Assert.Skip($"no 'shared/{below}' beside the checkout, and GAITSEAT_SHARED does not lead to it");
        return found;
    }
}
