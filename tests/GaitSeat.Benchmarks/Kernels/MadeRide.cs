using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Benchmarks;

/// <summary>A minute of rising trot as the eyes see it, with the models' noise on it: what the maths get to do.</summary>
internal static class MadeRide
{
    public const double Seconds = 60;
    public const double RateHz = 30;

    public static Sightings Sightings()
    {
        var camera = new MadeCamera { Seconds = Seconds, FrameRateHz = RateHz };
        return new ModelNoise().On(camera.Film(new MadeRider()), camera.PxPerCm);
    }
}
