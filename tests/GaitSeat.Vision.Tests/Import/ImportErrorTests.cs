using System.Text.Json.Nodes;
using GaitSeat.Vision.Import;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Import;

public sealed class ImportErrorTests
{
    [Fact]
    public void UnknownOperator_NamesNodeFileAndWhatIsSupported()
    {
        using var graph = new TinyGraph().Node("odd/one", "FancyNewOp", ["x"]).Write();

        var e = Assert.Throws<ModelException>(() => graph.Import("odd/one", 4));

        Assert.Contains("'odd/one' (FancyNewOp)", e.Message, StringComparison.Ordinal);
        Assert.Contains(graph.TopologyPath, e.Message, StringComparison.Ordinal);
        Assert.Contains("ResizeBilinear", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("padding", "VALI", "SAME, VALID, EXPLICIT")]
    [InlineData("data_format", "NCHW", "supported: NHWC")]
    public void UnknownAttributeValue_SaysWhichAreSupported(string key, string value, string expected)
    {
        using var graph = new TinyGraph()
            .Floats("k", [1], 1, 1, 1, 1)
            .Node("y", "Conv2D", ["x", "k"], [("strides", new[] { 1, 1, 1, 1 }), .. key == "padding" ? [] : new (string, object)[] { ("padding", "SAME") }, (key, value)])
            .Write();

        var e = Assert.Throws<ModelException>(() => graph.Import("y", 2, 2, 1));

        Assert.Contains($"{key} ", e.Message, StringComparison.Ordinal);
        Assert.Contains(value, e.Message, StringComparison.Ordinal);
        Assert.Contains(expected, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SamePaddingWithDilation_IsRefusedBeforeTheRuntimeDoes()
    {
        using var graph = new TinyGraph()
            .Floats("k", [1, 1, 1, 1], 2, 2, 1, 1)
            .Node("y", "Conv2D", ["x", "k"], ("strides", new[] { 1, 1, 1, 1 }), ("dilations", new[] { 1, 2, 2, 1 }), ("padding", "SAME"))
            .Write();

        Assert.Contains("SAME padding with dilations [2,2]", Assert.Throws<ModelException>(() => graph.Import("y", 4, 4, 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownActivation_NamesIt()
    {
        using var graph = new TinyGraph()
            .Floats("k", [1], 1, 1, 1, 1)
            .Node("y", "_FusedConv2D", ["x", "k"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "SAME"), ("fused_ops", new[] { "Elu" }))
            .Write();

        Assert.Contains("activation Elu", Assert.Throws<ModelException>(() => graph.Import("y", 2, 2, 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingNode_NamesItAndWhoAsked()
    {
        using var graph = new TinyGraph().Node("y", "Relu", ["nowhere"]).Write();

        var e = Assert.Throws<ModelException>(() => graph.Import("y", 4));

        Assert.Contains("'nowhere'", e.Message, StringComparison.Ordinal);
        Assert.Contains("'y'", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CircularGraph_IsRefused()
    {
        using var graph = new TinyGraph().Node("a", "Relu", ["b"]).Node("b", "Relu", ["a"]).Write();

        Assert.Contains("not made before it", Assert.Throws<ModelException>(() => graph.Import("a", 4)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void KernelThatIsNoConstant_IsRefused()
    {
        using var graph = new TinyGraph()
            .Node("y", "Conv2D", ["x", "x"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "SAME"))
            .Write();

        Assert.Contains("needs a constant at 'x'", Assert.Throws<ModelException>(() => graph.Import("y", 2, 2, 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingWeights_NamesFileAndRemedy()
    {
        using var graph = new TinyGraph().Floats("k", [1, 2], 2).Write();
        File.Delete(graph.WeightsPath);

        var e = Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath));

        Assert.Contains(graph.WeightsPath, e.Message, StringComparison.Ordinal);
        Assert.Contains("npm ci", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(9)]
    public void WeightsOfWrongLength_SaysFoundAndExpected(int length)
    {
        using var graph = new TinyGraph().Floats("k", [1, 2], 2).Write();
        File.WriteAllBytes(graph.WeightsPath, new byte[length]);

        var e = Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath));

        Assert.Contains($"{length} bytes", e.Message, StringComparison.Ordinal);
        Assert.Contains("expects 8", e.Message, StringComparison.Ordinal);
        Assert.Contains("npm ci", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../tiny.bin")]
    [InlineData("/etc/hostname")]
    [InlineData("")]
    public void WeightsOutsideTheFolder_AreRefused(string name)
    {
        using var graph = new TinyGraph().Floats("k", [1], 1).Write(name);

        Assert.Contains("without folders", Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("not json at all")]
    [InlineData("{}")]
    [InlineData("""{"modelTopology": [], "weightsManifest": []}""")]
    [InlineData("""{"modelTopology": {"node": [{"name": "a"}]}, "weightsManifest": []}""")]
    public void NoGraphModel_IsRefused(string text)
    {
        using var graph = new TinyGraph();
        File.WriteAllText(graph.TopologyPath, text);

        Assert.Contains("no graph model", Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingTopology_NamesRemedy()
    {
        using var graph = new TinyGraph();

        Assert.Contains("npm ci", Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownWeightType_IsNamed()
    {
        using var graph = new TinyGraph()
            .Weight("k", "float32", [1], [0], new JsonObject { ["dtype"] = "int4" })
            .Write();

        var e = Assert.Throws<ModelException>(() => TfjsGraph.Read(graph.TopologyPath));

        Assert.Contains("'k' is of type int4", e.Message, StringComparison.Ordinal);
        Assert.Contains("float16, uint8, uint16", e.Message, StringComparison.Ordinal);
    }
}
