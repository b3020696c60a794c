using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;
using GaitSeat.Store;

namespace GaitSeat.Benchmarks;

/// <summary>Rising trot as the eyes see it, with the models' noise on it: what the maths get to do.</summary>
internal static class MadeRide
{
    private const double RateHz = 30;

    public static Sightings Sightings(double seconds)
    {
        var camera = new MadeCamera { Seconds = seconds, FrameRateHz = RateHz };
        return new ModelNoise().On(camera.Film(new MadeRider()), camera.PxPerCm);
    }

    /// <summary>The clip's record, as it goes into the tables.</summary>
    public static ClipRecord Record(Sightings sightings, ClipMotion motion)
    {
        var info = new ClipInfo("/clips/x.mp4", sightings.Count / RateHz, 1280, 720, RateHz, "h264", "yuv420p", 0, false, new("mov,mp4", 0, 1, 30000, 0, "bt709", ColourMatrix.Bt709));
        var provenance = new Provenance(new('a', 64), "x.mp4", new('b', 64), new('c', 64), "0", Provenance.CurrentSchemaVersion);
        return new(provenance, null, info, ClipStatus.Measured, null, null, sightings, motion, [], motion.LeftOut, sightings.Count);
    }
}
