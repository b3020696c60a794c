using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class VerdictStoreTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Verdict_ComesBackAsItWasGiven()
    {
        var store = Open();
        var full = Made(Noon) with { Note = "left rein; \"only\" the first half", ToldFlagged = true, ToldProbability = 0.91, ClassifierHash = "abc", Drawn = Drawn.Random };
        var bare = Made(Noon.AddMinutes(1)) with { ToldFlagged = null, Answer = VerdictAnswer.CannotTell };
        await store.AppendAsync([full, bare], CancellationToken.None);
        Assert.Equal([full, bare], store.All());
    }

    [Fact]
    public async Task ChangeOfMind_IsANewRowAndTheOldStays()
    {
        var store = Open();
        await store.AppendAsync([Made(Noon)], CancellationToken.None);
        await store.AppendAsync([Made(Noon.AddDays(1)) with { Answer = VerdictAnswer.DoesNot }], CancellationToken.None);
        Assert.Equal([VerdictAnswer.Agrees, VerdictAnswer.DoesNot], store.All().Select(v => v.Answer));
    }

    [Fact]
    public async Task Append_TouchesNoFileThatIsThere()
    {
        var store = Open();
        await store.AppendAsync([Made(Noon)], CancellationToken.None);
        var before = Files().ToDictionary(f => f, File.ReadAllBytes);
        await store.AppendAsync([Made(Noon.AddHours(1)), Made(Noon) with { ClipKey = Tests.Made.KeyB }], CancellationToken.None);
        Assert.All(before, f => Assert.Equal(f.Value, File.ReadAllBytes(f.Key)));
        Assert.Equal(before.Count + 2, Files().Length);
    }

    [Fact]
    public async Task SameVerdictsTwice_StandOnce()
    {
        var store = Open();
        Assert.Equal(2, await store.AppendAsync([Made(Noon), Made(Noon.AddHours(1)), Made(Noon)], CancellationToken.None));
        Assert.Equal(1, await store.AppendAsync([Made(Noon.AddHours(1)), Made(Noon.AddHours(2))], CancellationToken.None));
        Assert.Equal(3, store.All().Count);
    }

    [Fact]
    public async Task ErasedClip_TakesItsVerdictsAlongAndNoOthers()
    {
        var store = Open();
        await store.AppendAsync([Made(Noon), Made(Noon) with { ClipKey = Tests.Made.KeyB }], CancellationToken.None);
        Dataset.Open(_folder.Path).Erase(Tests.Made.KeyA);
        Assert.Equal(Tests.Made.KeyB, Assert.Single(store.All()).ClipKey);
    }

    [Fact]
    public async Task NoJudge_IsRefusedAndNothingWritten()
    {
        var store = Open();
        await Assert.ThrowsAsync<ArgumentException>(() => store.AppendAsync([Made(Noon), Made(Noon) with { Judge = " " }], CancellationToken.None));
        Assert.Empty(store.All());
    }

    private static Verdict Made(DateTimeOffset at) => new(
        Tests.Made.KeyA, "clip-a.mp4", 2, Fault.ChairSeat, VerdictAnswer.Agrees, "C1", at, null, Drawn.Chosen, false, null, "pipe1", "model1", null);

    private VerdictStore Open() => new(Dataset.Open(_folder.Path));

    private string[] Files() => Directory.GetFiles(Path.Combine(_folder.Path, "verdicts"));
}
