namespace GaitSeat.Store.Tests;

public sealed class ClipKeyTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>Values of FIPS 180-2, appendix B, and of the empty message (from memory; any SHA-256 tool gives them).</summary>
    [Theory]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    public async Task KnownBytes_GiveTheKnownKey(string text, string key)
    {
        await File.WriteAllTextAsync(_folder.File("x"), text);
        Assert.Equal(key, await ClipKey.OfFileAsync(_folder.File("x"), CancellationToken.None));
    }

    /// <summary>A million letters a, the long message of FIPS 180-2, appendix B.3: longer than a read.</summary>
    [Fact]
    public async Task LongFile_GivesTheKnownKey()
    {
        await File.WriteAllTextAsync(_folder.File("x"), new string('a', 1_000_000));
        Assert.Equal("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0", await ClipKey.OfFileAsync(_folder.File("x"), CancellationToken.None));
    }

    [Fact]
    public async Task FileNotThere_Throws() =>
        await Assert.ThrowsAsync<FileNotFoundException>(() => ClipKey.OfFileAsync(_folder.File("none"), CancellationToken.None));

    public void Dispose() => _folder.Dispose();
}
