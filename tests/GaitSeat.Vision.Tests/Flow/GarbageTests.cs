using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>Flow keeps its buffers: hours of footage must not leave garbage behind at every frame.</summary>
public sealed class GarbageTests
{
    // Buffers grow to their size over the first frames.
    private const int FirstSteady = 8;
    private const int Frames = 24;

    // What remains are a few small objects a frame that tell where things are; one row of the picture has more bytes than this.
    private const long MostBytesAFrame = 2048;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void SteadyFrames_AllocateNextToNothing(bool tellHorse)
    {
        var scene = new RideScene { TellHorse = tellHorse };
        var flow = new PatchFlow(new FlowSettings());
        var bytes = new List<long>();
        for (var i = 0; i < Frames; i++)
        {
            using var frame = scene.Paint(i);
            var hints = scene.Hints(i);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var step = flow.Next(frame, hints);
            bytes.Add(GC.GetAllocatedBytesForCurrentThread() - before);
            Assert.Equal(i == 0, step.Trunk.Points == 0);
        }

        Assert.All(bytes.Skip(FirstSteady), b => Assert.InRange(b, 0, MostBytesAFrame));
    }
}
