using GaitSeat.Vision.Models;
using GaitSeat.Vision.Tests.Import;

namespace GaitSeat.Vision.Tests.Models;

public sealed class OnnxSessionTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("onnx-session-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Run_SeveralTimes_UsesTheSameMemoryAndGivesNewNumbers()
    {
        using var session = new OnnxSession(Doubling(), threads: 1);

        for (var i = 0; i < 3; i++)
        {
            Assert.Equal([2f * i, 2, -4], session.Run([i, 1, -2], 1)["y"].ToArray());
            Assert.Equal([2f * i, 0, 0, 2, 2, 2], session.Run([i, 0, 0, 1, 1, 1], 2)["y"].ToArray());
        }

        var first = session.Run([1, 2, 3], 1)["y"];
        session.Run([4, 5, 6], 1);
        Assert.Equal([8, 10, 12], first.ToArray());
    }

    [Fact]
    public void Run_WrongLength_SaysFoundAndExpected()
    {
        using var session = new OnnxSession(Doubling(), threads: 1);

        var e = Assert.Throws<ArgumentException>(() => { session.Run(new float[4], 2); });

        Assert.Contains("found 4", e.Message, StringComparison.Ordinal);
        Assert.Contains("2 pictures of 3", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Outputs_UnknownName_NamesThoseThere()
    {
        using var session = new OnnxSession(Doubling(), threads: 1);

        var e = Assert.Throws<ArgumentException>(() => { _ = session.Run(new float[3], 1)["z"]; });

        Assert.Contains("'z'", e.Message, StringComparison.Ordinal);
        Assert.Contains("has y", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Gpu_WithoutACard_RunsOnTheProcessor_AndSaysSo()
    {
        using var session = new OnnxSession(Doubling(), threads: 1, InferenceDevice.Gpu);

        if (!InferenceDevices.IsBuiltIn(InferenceDevice.Gpu)) Assert.Equal(InferenceDevice.Cpu, session.Device);
        Assert.Equal([2f, 4, 6], session.Run([1, 2, 3], 1)["y"].ToArray());
    }

    [Fact]
    public void Several_RunAtOnce_EachWithItsOwnNumbers()
    {
        var callers = OnnxSession.Several(Doubling(), 4);

        Parallel.For(0, callers.Length, c =>
        {
            for (var i = 0; i < 200; i++) Assert.Equal([2f * c, 2f * i, -4], callers[c].Run([c, i, -2], 1)["y"].ToArray());
        });

        foreach (var caller in callers) caller.Dispose();
    }

    [Fact]
    public void Several_TheFirstDisposedOf_TheOthersStillRun()
    {
        var callers = OnnxSession.Several(Doubling(), 2);
        callers[0].Dispose();
        callers[0].Dispose();
        Assert.Equal([2f, 4, 6], callers[1].Run([1, 2, 3], 1)["y"].ToArray());
        callers[1].Dispose();
    }

    private ModelFile Doubling()
    {
        using var graph = new TinyGraph().Floats("two", [2], 1).Node("double", "Mul", ["x", "two"]).Write();
        var path = Path.Combine(_folder.FullName, "double.onnx");
        File.WriteAllBytes(path, graph.Import("double", 3));
        return new ModelFile("double", path, "");
    }
}
