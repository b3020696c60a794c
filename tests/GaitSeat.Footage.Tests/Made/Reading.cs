using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>Times and bar-code numbers of a whole reading.</summary>
internal sealed record Reading(ClipInfo Clip, ReadReport Report, double[] Times, int[] Numbers)
{
    public static async Task<Reading> OfAsync(MadeClips clips, string path, ReadSettings? settings = null, FrameChoice choice = FrameChoice.All)
    {
        var clip = await new ClipProbe(clips.Tools, new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
        var report = new ReadReport();
        List<double> times = [];
        List<int> numbers = [];
        await foreach (var frame in new FrameReader(clips.Tools, choice: choice).ReadAsync(clip, settings ?? new(), report, CancellationToken.None))
        {
            using (frame)
            {
                Assert.Equal(times.Count, frame.Index);
                times.Add(frame.TimeSeconds);
                numbers.Add(Barcode.Read(frame));
            }
        }

        return new(clip, report, [.. times], [.. numbers]);
    }

    public void ShowsInOrder(IEnumerable<int> numbers) => Assert.Equal(numbers.Select(n => n % 256), Numbers);

    public void TimesAre(IEnumerable<double> seconds, double toleranceSeconds)
    {
        var expected = seconds.ToArray();
        Assert.Equal(expected.Length, Times.Length);
        for (var i = 0; i < expected.Length; i++) Assert.True(Math.Abs(expected[i] - Times[i]) <= toleranceSeconds, $"Frame {i} is at {Times[i]} s, not {expected[i]} s.");
    }
}
