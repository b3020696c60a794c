using GaitSeat.Cli.Accuracy;
using GaitSeat.Footage;
using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Studio;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>Heads against the studio's truth: where the rider's face truly is, the exported pictures show nothing of it.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class BlurTests(SeasonFolder season) : IAsyncLifetime
{
    /// <summary>The clip is measured once for all tests.</summary>
    private static readonly SemaphoreSlim _one = new(1);
    private static ClipMeasurement? _measured;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-blur-").FullName;
    private ClipTruth _truth = null!;

    public async ValueTask InitializeAsync()
    {
        if (!Repository.HasWeights) return;
        _truth = TruthFile.Read(TruthFile.PathFor(season.Folder, "trot"));
        await _one.WaitAsync();
        try
        {
            if (_measured is not null) return;
            using var workshop = Open();
            _measured = await new ClipMeasurer(workshop).MeasureAsync(Path.Combine(season.Clips, SeasonFolder.Trot), BodyLengths.Unknown, null, CancellationToken.None);
        }
        finally
        {
            _one.Release();
        }
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public void EveryFrame_HasItsFaceInABlurredBox()
    {
        var measured = Measured();
        var cover = HeadCover.Of(_truth, measured.Sightings, measured.Motion, measured.People.OthersAt);
        Assert.True(cover.Frames > 60, $"{cover.Frames} frames with a face");
        Assert.Equal(cover.Frames, cover.Covered);
        // And not by blurring everything.
        Assert.True(cover.WholePicture < cover.Frames / 2, $"{cover.WholePicture} of {cover.Frames} pictures blurred as a whole");
    }

    /// <summary>The head is not found in some frames, then the rider neither: what was seen around them in time covers the face.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MissedFrames_AreCoveredByWhatWasSeenAround(bool riderToo)
    {
        var measured = Measured();
        bool IsMissed(int frame) => frame % 20 is >= 10 and < 13;
        var (s, trace) = (measured.Sightings, measured.Motion.Trace);
        var seen = riderToo ? s with { Rider = [.. s.Rider.Select((b, i) => IsMissed(i) ? null : b)] } : s;
        var points = trace.Points.Select((p, i) => (BodyPoint)i is BodyPoint.Ear or BodyPoint.Nose || riderToo ? p with { XPx = Without(p.XPx), YPx = Without(p.YPx) } : p).ToArray();
        double[] Without(double[] values) => [.. values.Select((v, i) => IsMissed(i) ? double.NaN : v)];
        var cover = HeadCover.Of(_truth, seen, measured.Motion with { Trace = trace with { Points = points } }, measured.People.OthersAt);
        Assert.Equal(cover.Frames, cover.Covered);
    }

    /// <summary>The check must be able to fail: a blur meant for another place covers nothing.</summary>
    [Fact]
    public void HeadThatIsElsewhere_IsNotCovered()
    {
        var measured = Measured();
        var trace = measured.Motion.Trace;
        var moved = trace.Points.Select(p => p with { YPx = [.. p.YPx.Select(y => y + 150)] }).ToArray();
        var s = measured.Sightings with { Rider = [.. measured.Sightings.Rider.Select(b => b is { } r ? r with { Y = r.Y + 150 } : (BoxPx?)null)] };
        Assert.True(HeadCover.Of(_truth, s, measured.Motion with { Trace = trace with { Points = moved } }, _ => []).Share < 0.5);
    }

    /// <summary>
    /// Through the maker, the encoder and back: in place of the clip's pictures stand blocks of black and white noise, painted by what was measured in the clip. Where the face truly is, the
    /// exported film has lost them.
    /// </summary>
    [Fact]
    public async Task ExportedFilm_ShowsNothingWhereTheFaceIs()
    {
        const double LeftOver = 45, Untouched = 90;
        var measured = Measured();
        var ffmpeg = FfmpegTools.Locate();
        var noise = await NoiseAsync(ffmpeg, measured);
        var reader = new FrameReader(ffmpeg);
        var plain = new OverlaySettings { ShowBody = false, ShowPlumbLine = false, ShowThighAngle = false, ShowStrip = false, FlashSeconds = 0, Encode = new() { Crf = 10 } };
        var made = await new OverlayMaker(reader, ffmpeg).MakeAsync(noise, new(), measured.Sightings, measured.Motion, _folder, "noise", plain, measured.People.OthersAt, CancellationToken.None);
        var exported = await new ClipProbe(ffmpeg, new()).ProbeAsync(made.VideoPath, CancellationToken.None);
        var (frames, inside, outside) = (0, 0.0, 0);
        await foreach (var frame in reader.ReadAsync(exported, new(), CancellationToken.None))
        {
            using (frame)
            {
                var row = _truth.FrameRows[Math.Min(frame.Index, _truth.FrameRows.Count - 1)];
                if (!row.RiderFullInFrame) continue;
                frames++;
                var face = HeadCover.Face(row, _truth.FacingTerm, (double)frame.WidthPx / _truth.Width).ToArray();
                inside = Math.Max(inside, face.Max(p => Contrast(frame, p)));
                if (Contrast(frame, new(frame.WidthPx / 2.0, frame.HeightPx - 20)) > Untouched) outside++;
            }
        }

        Assert.True(frames > 60, $"{frames} frames");
        Assert.True(outside > frames / 2, $"the noise outside is to be seen in {outside} of {frames} frames only");
        Assert.True(inside < LeftOver, $"a contrast of {inside:0} is left in a face");
    }

    /// <summary>
    /// The long check: every clip of a folder with truth beside it. What an accuracy run saw in them is taken from its folder <c>seen</c>; clips it has not seen are looked at anew.
    /// GAITSEAT_BLUR_FOOTAGE names the folders, parted by the system's path separator.
    /// </summary>
    [Fact]
    public async Task WholeSets_AreCovered()
    {
        if (!LongRun.IsOn || Environment.GetEnvironmentVariable("GAITSEAT_BLUR_FOOTAGE") is not { Length: > 0 } folders) Assert.Skip("A long check: GAITSEAT_LONG=1, and GAITSEAT_BLUR_FOOTAGE names folders with made clips.");
        var settings = new PipelineSettings();
        using var workshop = Open();
        var (sum, misses) = (new HeadCover(0, 0, 0, 0), new List<string>());
        var (clips, worst) = (0, new List<(string Clip, HeadCover Cover)>());
        foreach (var truthPath in Environment.GetEnvironmentVariable("GAITSEAT_BLUR_FOOTAGE")!.Split(Path.PathSeparator).SelectMany(f => Directory.EnumerateFiles(f, "*.truth.json")).Order(StringComparer.Ordinal))
        {
            var clip = truthPath[..^".truth.json".Length] + ".mp4";
            var look = await new SeenStore(Path.Combine(Path.GetDirectoryName(truthPath)!, "seen"), anySettings: true).LookAsync(clip, settings, new(() => workshop), CancellationToken.None);
            // A clip that is set aside is never painted.
            if (look.Seen is not { } seen) continue;
            var measured = ClipMeasurer.Measure(seen, BodyLengths.Unknown, settings);
            var cover = HeadCover.Of(TruthFile.Read(truthPath), measured.Sightings, measured.Motion, measured.People.OthersAt, misses);
            (clips, sum) = (clips + 1, sum + cover);
            if (cover.Covered < cover.Frames) worst.Add((Path.GetFileName(clip), cover));
        }

        var told = $"{clips} clips, {sum.Frames} frames: {sum.Covered} covered ({100 * sum.Share:0.000} %), {sum.MostlyCovered} for nine tenths, {sum.WholePicture} blurred as a whole; "
            + string.Join(", ", worst.OrderByDescending(w => w.Cover.Frames - w.Cover.Covered).Select(w => $"{w.Clip} {w.Cover.Frames - w.Cover.Covered} of {w.Cover.Frames} (mostly {w.Cover.MostlyCovered})"))
            + string.Concat(misses.GroupBy(m => m).OrderByDescending(m => m.Count()).Select(m => $"\n{m.Count()}: {m.Key}"));
        TestContext.Current.TestOutputHelper?.WriteLine(told);
        Assert.True(sum.Share >= 0.999, told);
    }

    private static Workshop Open() => Workshop.Open(FfmpegTools.Locate(), Cli.Places.Models(), new());

    private static ClipMeasurement Measured()
    {
        if (_measured is null) Assert.Skip(Repository.WeightsMissing);
        return _measured!;
    }

    private async Task<ClipInfo> NoiseAsync(FfmpegTools ffmpeg, ClipMeasurement measured)
    {
        const int Block = 4;
        var path = Path.Combine(_folder, "noise-in.mp4");
        var (width, height) = (measured.Sightings.WidthPx, measured.Sightings.HeightPx);
        var random = new SeededBits(5);
        var pixels = new byte[width * height * 3];
        for (var y = 0; y < height; y += Block)
        {
            for (var x = 0; x < width; x += Block)
            {
                var value = (byte)(random.Next() ? 235 : 20);
                for (var j = y; j < Math.Min(height, y + Block); j++) pixels.AsSpan((j * width + x) * 3, Math.Min(Block, width - x) * 3).Fill(value);
            }
        }

        await using (var encoder = new ClipEncoder(ffmpeg, path, width, height, _truth.Fps, new() { Crf = 10 }))
        {
            foreach (var row in _truth.FrameRows) await encoder.WriteAsync(pixels, row.TimeSeconds, CancellationToken.None);
            await encoder.FinishAsync();
        }

        return await new ClipProbe(ffmpeg, new()).ProbeAsync(path, CancellationToken.None);
    }

    /// <summary>Difference of the brightest and darkest pixel within 6 px, green.</summary>
    private static double Contrast(Frame frame, PointPx at)
    {
        const int Reach = 6;
        int low = 255, high = 0;
        for (var y = Math.Max(0, (int)at.Y - Reach); y <= Math.Min(frame.HeightPx - 1, (int)at.Y + Reach); y++)
        {
            for (var x = Math.Max(0, (int)at.X - Reach); x <= Math.Min(frame.WidthPx - 1, (int)at.X + Reach); x++)
            {
                var value = frame.Rgb[(y * frame.WidthPx + x) * 3 + 1];
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }
        }

        return high - low;
    }

    /// <summary>A shift register: the same bits on every machine.</summary>
    private sealed class SeededBits(uint seed)
    {
        private uint _state = seed;

        public bool Next()
        {
            _state ^= _state << 13;
            _state ^= _state >> 17;
            _state ^= _state << 5;
            return (_state & 1) == 0;
        }
    }
}
