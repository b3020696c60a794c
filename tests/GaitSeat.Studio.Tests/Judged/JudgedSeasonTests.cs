using GaitSeat.Model;

namespace GaitSeat.Studio.Tests.Judged;

public sealed class JudgedSeasonTests
{
    private static readonly JudgedPlan Plan = new()
    {
        Riders = 30,
        ClipsEach = 20,
        WrongAnswersPct = 5,
        Faults =
        [
            new() { Fault = Fault.StirrupShort, SharePct = 20, ThighSitDeg = [8, 14] },
            new() { Fault = Fault.ChairSeat, SharePct = 10, With = Fault.StirrupShort, ShareWithPct = 50, DriftOffsetCm = [6, 10] },
        ],
    };

    private static readonly IReadOnlyList<JudgedClip> Clips = JudgedSeason.Of(Plan, seed: 7);

    [Fact]
    public void SeasonOfTheRepository_PlantsSeveralFaultsThatComeTogether()
    {
        var season = DemoSeason.Load(DemoSeasonTests.SeasonPath());
        Assert.Equal(season.Judged!.Riders * season.Judged.ClipsEach, season.JudgedClips.Count);
        Assert.Equal(5, season.Judged.WrongAnswersPct);
        Assert.True(season.Judged.Faults.Count >= 5);
        Assert.Contains(season.JudgedClips, c => c.Planted.Count >= 3);
        Assert.Equal(season.JudgedClips.Count, season.JudgedClips.Select(c => c.Script.Seed).Distinct().Count());
    }

    /// <summary>600 clips: three standard errors of a share of 20 % are 5 %.</summary>
    [Fact]
    public void Faults_AreAsFrequentAsThePlanSays_AndComeTogether()
    {
        var shortOnes = Clips.Where(c => c.Planted.Contains(Fault.StirrupShort)).ToArray();
        Assert.InRange(shortOnes.Length / (double)Clips.Count, 0.15, 0.25);
        var (with, without) = (Share(shortOnes), Share([.. Clips.Except(shortOnes)]));
        Assert.InRange(with, 0.35, 0.65);
        Assert.InRange(without, 0.06, 0.14);
        static double Share(JudgedClip[] clips) => clips.Count(c => c.Planted.Contains(Fault.ChairSeat)) / (double)clips.Length;
    }

    [Fact]
    public void Answers_AreWhatWasPlantedBarTheShareThatIsWrong()
    {
        var answers = Clips.SelectMany(c => c.Answers.Select(a => a.Value == c.Planted.Contains(a.Key))).ToArray();
        Assert.Equal(2 * Clips.Count, answers.Length);
        Assert.InRange(answers.Count(right => !right) / (double)answers.Length, 0.03, 0.07);
    }

    [Fact]
    public void SamePlanAndSeed_GiveTheSameSeason()
    {
        static string Text(IEnumerable<JudgedClip> clips) => string.Join('\n', clips.Select(c => $"{c.Name} {c.Script} {string.Join(',', c.Planted.Order())} {string.Join(',', c.Answers.OrderBy(a => a.Key))}"));
        Assert.Equal(Text(Clips), Text(JudgedSeason.Of(Plan, seed: 7)));
        Assert.NotEqual(Text(Clips), Text(JudgedSeason.Of(Plan, seed: 8)));
    }

    [Fact]
    public void WrongPlan_IsRefusedWithEveryMistake()
    {
        var wrong = Plan with
        {
            Riders = 0,
            Faults = [new() { Fault = Fault.ChairSeat, SharePct = 120, With = Fault.SmallRise }, new() { Fault = Fault.ChairSeat, SharePct = 10, RiseCm = [2, 1] }],
        };
        var said = Assert.Throws<ArgumentException>(() => JudgedSeason.Of(wrong, 1)).Message;
        Assert.All(["riders: 1 to 500", "chair_seat: share_pct: 0 to 100", "a fault before it in the list", "with and share_with_pct go together", "stands twice", "the smaller first"], part => Assert.Contains(part, said, StringComparison.Ordinal));
    }
}
