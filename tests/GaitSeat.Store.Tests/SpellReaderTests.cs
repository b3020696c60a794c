using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class SpellReaderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Spells_ComeBackAsTheyWereWritten()
    {
        var spells = await Read(Made.Measured());
        var motion = Made.Motion();
        Assert.Equal(motion.Spells, spells.Select(s => s.Spell));
        Assert.Empty(spells[0].Strides);
        Assert.Equal(motion.Strides.Select(s => s with { Measures = Nothing }), spells[1].Strides.Select(s => s with { Measures = Nothing }));
        foreach (var (written, read) in motion.Strides.Zip(spells[1].Strides))
            Assert.All(MeasureCatalogue.All, m => Assert.Equal(WithoutLoneError(written.Measures[m.Measure]), read.Measures[m.Measure]));
    }

    [Fact]
    public async Task WhatTheSheetSays_ComesWithTheSpell()
    {
        var spell = (await Read(Made.Measured()))[1];
        Assert.Equal(("R07", "H3", new DateOnly(2026, 5, 31), "left"), (spell.Rider, spell.Horse, spell.SessionDate, spell.Rein));
        Assert.Equal("süd", spell.Circumstances["arena"]);
        Assert.Equal(Made.Provenance() with { ClipFile = "clip-a.mp4" }, spell.Provenance);
    }

    [Fact]
    public async Task OtherRuns_AreNotMixedIn()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        await dataset.WriteAsync(Made.Measured(pipeline: "pipe2"), withTracks: false, CancellationToken.None);
        using var query = new DatasetQuery(dataset.Folder);
        Assert.Equal(2, SpellReader.Read(query, DatasetRun.Choose(query, "pipe2")).Count);
    }

    [Fact]
    public void EmptyDataset_SaysThatClipsAreNeeded()
    {
        var dataset = Dataset.Open(_folder.Path);
        using var query = new DatasetQuery(dataset.Folder);
        Assert.Contains("no clip yet", Assert.Throws<DatasetException>(() => DatasetRun.Choose(query, null)).Message, StringComparison.Ordinal);
    }

    private static MeasureSet Nothing { get; } = new();

    private static Measured WithoutLoneError(Measured m) => m.IsMissing ? Measured.Missing : m;

    private async Task<IReadOnlyList<RiddenSpell>> Read(ClipRecord record)
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(record, withTracks: false, CancellationToken.None);
        using var query = new DatasetQuery(dataset.Folder);
        return SpellReader.Read(query, DatasetRun.Choose(query, null));
    }
}
