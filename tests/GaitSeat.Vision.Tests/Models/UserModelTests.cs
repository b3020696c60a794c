using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

public sealed class UserModelTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("user-model-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Open_HeatmapModel_IsDescribed()
    {
        var model = UserModel.Open(Write(points: 17, inputChannels: 3));

        Assert.Equal(new PictureInput(10, 8, IsPlanar: false), model.Input);
        Assert.Equal(("y", 4, 5), (model.HeatmapOutput, model.HeatmapRows, model.HeatmapColumns));
        Assert.Contains(model.Description, line => line.Contains("17 heat maps of 5 x 4", StringComparison.Ordinal));
        Assert.Equal(64, model.File.Sha256.Length);
    }

    [Fact]
    public void Open_HeatmapModel_RunsAndDecodes()
    {
        // Halved in size; the even maps are red minus green, the odd ones green minus red: one bright block of either must be found.
        var model = UserModel.Open(Write(points: 17, inputChannels: 3));
        var rgb = new byte[8 * 10 * 3];
        foreach (var (x, y) in new[] { (6, 4), (7, 4), (6, 5), (7, 5) }) rgb[(y * 10 + x) * 3] = 255;
        foreach (var (x, y) in new[] { (2, 2), (3, 2), (2, 3), (3, 3) }) rgb[(y * 10 + x) * 3 + 1] = 255;
        var input = new float[rgb.Length];
        model.Input.Write(rgb, input);
        using var session = new OnnxSession(model.File, threads: 1);
        var points = new HeatmapPoint[UserModel.PointCount];

        HeatmapDecoder.Decode(session.Run(input, 1)[model.HeatmapOutput], model.HeatmapRows, model.HeatmapColumns, points);

        Assert.All(points.Where((_, k) => k % 2 == 0), p => Assert.Equal((3.5 / 5, 2.5 / 4), (p.X, p.Y)));
        Assert.All(points.Where((_, k) => k % 2 == 1), p => Assert.Equal((1.5 / 5, 1.5 / 4), (p.X, p.Y)));
    }

    [Theory]
    [InlineData(16, 3, "'y' [1,16,4,5]")]
    [InlineData(17, 4, "[-1,8,10,4]")]
    public void Open_OtherForm_SaysFoundAndAllowed(int points, int inputChannels, string found)
    {
        var e = Assert.Throws<ModelException>(() => UserModel.Open(Write(points, inputChannels)));

        Assert.Contains(found, e.Message, StringComparison.Ordinal);
        Assert.Contains("[N,17,h,w]", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_NoSuchFile_SaysWhereAndWhatIsAllowed()
    {
        var path = Path.Combine(_folder.FullName, "none.onnx");

        var e = Assert.Throws<ModelException>(() => UserModel.Open(path));

        Assert.Contains(path, e.Message, StringComparison.Ordinal);
        Assert.Contains("[N,17,h,w]", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_NoOnnxFile_SaysWhereAndWhatIsAllowed()
    {
        var path = Path.Combine(_folder.FullName, "text.onnx");
        File.WriteAllText(path, "this is a letter to my aunt");

        var e = Assert.Throws<ModelException>(() => UserModel.Open(path));

        Assert.Contains(path, e.Message, StringComparison.Ordinal);
        Assert.Contains("[N,17,h,w]", e.Message, StringComparison.Ordinal);
    }

    // The reader shows one picture at a time.
    [Theory]
    [InlineData(-1, true)]
    [InlineData(1, true)]
    [InlineData(4, false)]
    public void PictureInput_FixedBatch_MustBeOne(int batch, bool allowed)
    {
        Assert.Equal(allowed, PictureInput.Of([batch, 8, 10, 3]) is not null);
        Assert.Equal(allowed, PictureInput.Of([batch, 3, 8, 10]) is not null);
    }

    [Fact]
    public void PictureInput_Planar_PutsChannelsApart()
    {
        var input = new float[6];

        new PictureInput(2, 1, IsPlanar: true).Write([255, 0, 0, 0, 0, 255], input);

        // (255 - 123.675) / 58.395 = 2.24891; -123.675 / 58.395 = -2.11790; -116.28 / 57.12 = -2.03571; -103.53 / 57.375 = -1.80444; (255 - 103.53) / 57.375 = 2.64
        float[] expected = [2.24891f, -2.11790f, -2.03571f, -2.03571f, -1.80444f, 2.64f];
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], input[i], 1e-4f);
    }

    private string Write(int points, int inputChannels) => HeatmapModel.Write(_folder.FullName, 10, 8, points, inputChannels);
}
