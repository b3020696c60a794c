using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class AtomicFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void Written_ReplacesTheFileAndLeavesNothingBeside()
    {
        var path = Path.Combine(_folder.Path, "new", "page.md");
        AtomicFile.WriteText(path, "before");

        AtomicFile.WriteBytes(path, file => file.Write("after"u8));

        Assert.Equal("after", File.ReadAllText(path));
        Assert.Equal([path], Directory.EnumerateFiles(Path.GetDirectoryName(path)!));
    }

    [Fact]
    public void WritingFails_TheOldFileStaysAndNothingBeside()
    {
        var path = Path.Combine(_folder.Path, "page.md");
        AtomicFile.WriteText(path, "before");

        Assert.Throws<IOException>(() => AtomicFile.WriteBytes(path, file =>
        {
            file.Write("half of it"u8);
            throw new IOException("no room on the disk");
        }));

        Assert.Equal("before", File.ReadAllText(path));
        Assert.Equal([path], Directory.EnumerateFiles(_folder.Path));
    }

    public void Dispose() => _folder.Dispose();
}
