using GaitSeat.Study.Agreement;
using GaitSeat.Study.Reliability;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Reliability;

public sealed class SessionReliabilityTests
{
    /// <summary>As many sessions and strides each: the one-way ICC(1,1) of the table of session means (Shrout and Fleiss 1979), and its SEM.</summary>
    [Fact]
    public void BalancedSessions_GiveTheOneWayIccOfTheirMeans()
    {
        var (values, riders, sessions) = Made(12, _ => 3, _ => 8);
        var found = SessionReliability.Of(values, riders, sessions, new() { Replicates = 150 });
        var table = RatingTable.Of([.. values.Chunk(24).Select(r => r.Chunk(8).Select(s => s.Average()).ToArray())]);
        var icc = table.Icc(IccForm.OneWaySingle);
        Assert.Equal(icc.Value, found.Icc, 1e-6);
        Assert.Equal(Math.Sqrt(table.Within), found.Sem, 1e-6);
        Assert.Equal(2.771808 * found.Sem, found.Mdc95, 1e-5);
        Assert.InRange(found.IccLow, icc.Low - 0.1, icc.Low + 0.1);
        Assert.InRange(found.IccHigh, icc.High - 0.05, icc.High + 0.05);
    }

    /// <summary>Known truth: 2 between riders, 0.5 between sessions, 1 between strides.</summary>
    [Fact]
    public void UnequalSessions_HoldTheTruth()
    {
        var (values, riders, sessions) = Made(60, r => 2 + r % 3, s => 3 + s % 6);
        var found = SessionReliability.Of(values, riders, sessions, new() { Replicates = 60 });
        Assert.Equal(2, found.RiderSd, 0.6);
        Assert.Equal(0.5, found.SessionSd, 0.15);
        Assert.Equal(1, found.StrideSd, 0.06);
        Assert.InRange(4 / (4 + 0.25 + 1 / found.StridesPerSession), found.IccLow, found.IccHigh);
    }

    [Fact]
    public void NoSecondSession_IsRefused()
    {
        var (values, riders, sessions) = Made(6, _ => 1, _ => 5);
        Assert.Contains("no rider has a second session", Assert.Throws<StudyException>(() => SessionReliability.Of(values, riders, sessions, new())).Message, StringComparison.Ordinal);
    }

    private static (double[] Values, string[] Riders, string[] Sessions) Made(int riders, Func<int, int> sessions, Func<int, int> strides)
    {
        var random = new Random(9);
        var rows = new List<(double Value, string Rider, string Session)>();
        for (var r = 0; r < riders; r++)
        {
            var own = 10 + Normal.Sample(random, 0, 2);
            for (var s = 0; s < sessions(r); s++)
            {
                var day = own + Normal.Sample(random, 0, 0.5);
                for (var i = 0; i < strides(s); i++) rows.Add((day + Normal.Sample(random, 0, 1), $"rider {r}", $"day {s}"));
            }
        }

        return ([.. rows.Select(r => r.Value)], [.. rows.Select(r => r.Rider)], [.. rows.Select(r => r.Session)]);
    }
}
