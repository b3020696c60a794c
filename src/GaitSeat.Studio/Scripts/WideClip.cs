using GaitSeat.Footage;

namespace GaitSeat.Studio;

/// <summary>Draws the numbers of one clip of the wide set within the conditions of its row.</summary>
internal static class WideClip
{
    private const double Seconds = 8;

    /// <summary>The rider never fills more of the picture's height than this, wherever the horse is.</summary>
    private const double FullestShare = 0.58;

    public static ClipScript Draw(WideRow row, SeededNoise noise)
    {
        // Combinations no leg can ride are drawn again; the order of draws keeps this the same for a seed.
        while (true)
        {
            try
            {
                return Fitted(row, WideRide.Draw(row, Filmed(row, noise), noise));
            }
            catch (ArgumentException)
            {
                // Out of a leg's reach, or the horse too near: next draw.
            }
        }
    }

    private static ClipScript Filmed(WideRow row, SeededNoise noise)
    {
        var (width, height) = PictureOf(row);
        var script = new ClipScript
        {
            Seed = (int)(noise.Next() % 1_000_000) + 1,
            DurationSeconds = Seconds,
            Facing = row.Facing,
            WidthPx = width,
            HeightPx = height,
            FrameRateHz = RateOf(row),
            VariableRate = row.Rate == "variable",
            Camera = CameraOf(row),
            RollDeg = row.Roll == "level" ? 0 : noise.Between(1, 4) * (noise.Uniform() < 0.5 ? -1 : 1),
            RiderHeightPx = row.Size switch { "small" => noise.Between(90, 200), "usual" => noise.Between(205, 300), _ => noise.Between(300, 500) * (height < 1000 ? 0.8 : 1) },
            ZoomChange = row.Camera == "pan-zoom" ? noise.Between(-0.15, 0.2) : 0,
            Light = row.Light switch { "dim" => noise.Between(0.55, 0.7), "low" => noise.Between(0.32, 0.45), _ => 1 },
            NoiseSd = row.Light switch { "dim" => noise.Between(4, 6), "low" => noise.Between(7, 11), _ => noise.Between(1, 3) },
            ShutterSeconds = row.Blur == "sharp" ? noise.Between(0.002, 0.005) : noise.Between(0.014, 0.025),
            Crf = row.BitRate switch { "low" => 30, "very-low" => 36, _ => 20 },
            Preset = row.BitRate == "good" ? EncodePreset.SuperFast : EncodePreset.VeryFast,
            PostEveryM = row.Occluder == "posts" ? noise.Between(2, 4) : 0,
            Bystander = row.Occluder switch { "helper-behind" => Bystander.Behind, "helper-in-front" => Bystander.InFront, _ => Bystander.None },
            Look = LookOf(row, noise),
        };
        return OnItsWay(row, script, noise);
    }

    private static ClipScript OnItsWay(WideRow row, ClipScript script, SeededNoise noise)
    {
        double Signed(double low, double high) => noise.Between(low, high) * (noise.Uniform() < 0.5 ? -1 : 1);
        return (row.Path, row.Camera) switch
        {
            // From further off in the core, so that a passing horse stays within 15 deg while the whole rider is in the picture.
            (_, "static") when row.Core => script with { Way = Way.Line, CameraDistanceM = noise.Between(26, 34), YawDeg = noise.Between(-3, 3) },
            ("circle-outside", "static") => script with { Way = Way.Line, CameraDistanceM = noise.Between(9, 13), YawDeg = noise.Between(-20, 20) },
            (_, "static") => script with { Way = Way.Line, CameraDistanceM = noise.Between(12, 18), YawDeg = noise.Between(-20, 20) },
            ("line-far", _) => script with { Way = Way.Line, CameraDistanceM = noise.Between(46, 52) },
            ("line-near", _) => script with { Way = Way.Line, CameraDistanceM = noise.Between(13, 18) },
            ("circle-inside", _) => script with { Way = Way.CircleFromInside, CircleDiameterM = noise.Between(10, 20), YawDeg = noise.Between(-35, 35) },
            ("circle-outside", _) => OutsideCircle(script, noise),
            ("turned", _) => script with { Way = Way.ConstantYaw, YawDeg = Signed(15, 40), CameraDistanceM = noise.Between(15, 20) },
            _ => script with { Way = Way.ConstantYaw, YawDeg = noise.Between(-13, 13), CameraDistanceM = noise.Between(10, 14) },
        };
    }

    private static ClipScript OutsideCircle(ClipScript script, SeededNoise noise)
    {
        var diameter = noise.Between(10, 20);
        return script with { Way = Way.CircleFromOutside, CircleDiameterM = diameter, CameraDistanceM = diameter / 2 + noise.Between(5, 9), CircleStartDeg = noise.Between(-180, 180) };
    }

    private static (int, int) PictureOf(WideRow row) => row.Rate == "120" ? (960, 540) : row.Picture switch
    {
        // Tall riders need tall pictures, small pictures hold small riders; 120 frames a second are small on every phone.
        "1920x1080" => (1920, 1080),
        "640x360" when row.Size == "small" => (640, 360),
        "720x1280" => (720, 1280),
        _ => (1280, 720),
    };

    private static double RateOf(WideRow row) => row.Rate switch
    {
        "29.97" => 30_000 / 1001.0,
        "variable" => 30,
        _ => double.Parse(row.Rate, System.Globalization.CultureInfo.InvariantCulture),
    };

    private static CameraWork CameraOf(WideRow row) => row.Camera switch
    {
        "static" => CameraWork.Static,
        "pan-zoom" => CameraWork.PanZoom,
        "hand-held" => CameraWork.HandHeld,
        _ => CameraWork.Pan,
    };

    private static Look LookOf(WideRow row, SeededNoise noise)
    {
        var look = Wardrobe.Pick(noise);
        return row.Clothes switch
        {
            "loose-jacket" => look with { LooseJacket = true },
            "long-hair" => look with { LongHair = true, Hair = noise.Uniform() < 0.5 ? "#4b3020" : "#b98f57" },
            "dark-on-dark" => look with { Coat = "#2c211c", Points = "#120f0d", Dapples = false, Stockings = false, Breeches = "#23242a", Jacket = "#1f2024", SaddleCloth = "#22252c", Saddle = "#1d1714" },
            _ => look,
        };
    }

    // Where the horse comes near, the whole clip is filmed with a shorter lens; a rider too small to be measured by anyone is brought nearer.
    private static ClipScript Fitted(WideRow row, ClipScript script)
    {
        const int Looks = 33;
        const double SmallestPx = 92;
        var ride = new Ride(script);
        var stage = new Stage(ride);
        var camera = new StudioCamera(ride, stage);
        var shown = Enumerable.Range(0, Looks).Select(i => LookAt(i / (Looks - 1.0))).ToArray();
        var sizes = shown.Select(s => s.PxPerM / LookAt(0.5).PxPerM * script.RiderHeightPx).ToArray();
        var change = Math.Min(FullestShare * script.HeightPx / sizes.Max(), Math.Max(1, SmallestPx / sizes.Average()));
        var fitted = script with { RiderHeightPx = script.RiderHeightPx * change };
        return fitted with { Conditions = WideWords.Of(row, fitted, change * sizes.Average(), shown.Max(s => Math.Abs(s.YawDeg))) };

        (double PxPerM, double YawDeg) LookAt(double share)
        {
            var seconds = share * script.DurationSeconds;
            var standing = stage.At(ride.At(seconds));
            return (StudioCamera.Project(camera.At(seconds), standing, default).PxPerM, standing.YawDeg);
        }
    }
}
