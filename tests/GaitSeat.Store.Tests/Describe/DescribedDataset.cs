using System.Text.Json;

namespace GaitSeat.Store.Tests.Describe;

/// <summary>A small dataset, compacted and described; made once for all tests that look at its pages.</summary>
public sealed class DescribedDataset : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    internal static DateOnly Day { get; } = new(2026, 6, 1);

    public string Dataset => _folder.Path;

    public string Compact => _folder.File("compact");

    public async ValueTask InitializeAsync()
    {
        var dataset = Store.Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Made.Measured(new('c', 64), session: Made.Session() with { Rider = "R 08/ü", Season = null, SessionDate = null }), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Made.SetAside(), withTracks: true, CancellationToken.None);
        await dataset.WriteSessionsAsync([new(new(new(2026, 5, 31), "R07", "H3"), [Made.KeyA], "pipe1", "model1", "test", [])], "pipe1", "model1", CancellationToken.None);
        Assert.Empty(Compactor.Run(Dataset, TimeProvider.System, CancellationToken.None).Problems);
        DatasetPages.Write(Dataset, new("Lessons of a spring", "Anna's school", "CC-BY-4.0", "https://example.org/lessons"), Day, "0.1.0-test");
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    internal JsonElement Json(string name)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(Compact, name)));
        return json.RootElement.Clone();
    }

    internal string Text(string name) => File.ReadAllText(Path.Combine(Compact, name));
}
