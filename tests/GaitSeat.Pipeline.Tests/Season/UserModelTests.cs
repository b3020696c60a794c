using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Tests.Models;

namespace GaitSeat.Pipeline.Tests.Season;

public sealed class UserModelTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-user-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void UserModel_TakesTheFirstModelsPlace_AndItsContentEntersTheModelHash()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        var path = HeatmapModel.Write(_folder, 24, 32);

        using var standard = Open(null);
        using var own = Open(path);
        Assert.Contains(own.Models, m => m.Path == path);
        Assert.DoesNotContain(own.Models, m => m.Name == ModelCatalogue.MoveNetThunder.Name);
        Assert.Equal(3, own.Models.Count);
        Assert.NotEqual(standard.ModelHash, own.ModelHash);
        Assert.Equal(standard.PipelineHash, own.PipelineHash);

        HeatmapModel.Write(_folder, 32, 48);
        using var changed = Open(path);
        Assert.NotEqual(own.ModelHash, changed.ModelHash);
        using var frame = new Model.Frame(0, 0, 320, 240);
        Assert.Equal(17, changed.Points.Read(0, frame, new(100, 40, 60, 160), 0).First.Count);
    }

    private static Workshop Open(string? userModel) =>
        Workshop.Open(FfmpegTools.Locate(), new(Repository.Weights, ModelStore.DefaultCacheFolder), new PipelineSettings { BodyPoints = new() { UserModel = userModel } });
}
