using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

public sealed class ModelStoreTests
{
    public static TheoryData<string> Names => [.. ModelCatalogue.All.Select(m => m.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Ensure_RestoredWeights_RunsWithTheStatedOutputs(string name)
    {
        var source = ModelCatalogue.All.Single(m => m.Name == name);
        using var session = new OnnxSession(Weights.Require(source), threads: 1);

        Assert.Equal(source.Outputs.Select(o => o.Name), session.OutputNames);
        Assert.Equal(source.InputShape, session.InputShape.Skip(1));
        var outputs = session.Run(new float[2 * session.InputLength], batch: 2);
        foreach (var output in source.Outputs) Assert.Equal(2, outputs.ShapeOf(output.Name)[0]);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Verify_RestoredWeights_MatchesTheirOwnRuntime(string name)
    {
        var result = ModelStore.Verify(Weights.Require(ModelCatalogue.All.Single(m => m.Name == name)));

        foreach (var o in result.Outputs) TestContext.Current.TestOutputHelper!.WriteLine($"{name} {o.Name}: greatest {o.Greatest:E2}, mean {o.Mean:E2}");
        Assert.All(result.Outputs, o => Assert.True(o.IsPassed, $"{o.Name}: greatest {o.Greatest:E2}, mean {o.Mean:E2}, allowed {o.Allowed:E2}"));
    }
}
