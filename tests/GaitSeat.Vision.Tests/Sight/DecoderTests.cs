using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class DecoderTests
{
    private static readonly CropTransform OneToOne = CropTransform.Letterbox(256, 256, 256);

    [Fact]
    public void MoveNet_HeatNearTheRegressedPlace_WinsOverStrongerHeatFarAway()
    {
        const int Grid = 64;
        float[] heat = new float[Grid * Grid * 17], centre = new float[Grid * Grid], regress = new float[heat.Length * 2], offset = new float[heat.Length * 2];
        centre[32 * Grid + 30] = 0.9f;
        const int Knee = 13;
        Set(regress, 32, 30, 10, 4);
        heat[(42 * Grid + 35) * 17 + Knee] = 0.6f;
        heat[(5 * Grid + 60) * 17 + Knee] = 0.95f;
        Set(offset, 42, 35, 0.25f, -0.5f);
        var found = MoveNetDecoder.Decode(new(heat, centre, regress, offset, Grid), OneToOne);
        Assert.Equal((35 - 0.5) * 4, found.X[Knee], 3);
        Assert.Equal((42 + 0.25) * 4, found.Y[Knee], 3);
        Assert.Equal(0.6f, found.Score[Knee]);

        static void Set(float[] map, int row, int column, float y, float x)
        {
            var at = ((row * Grid + column) * 17 + Knee) * 2;
            (map[at], map[at + 1]) = (y, x);
        }
    }

    [Fact]
    public void MoveNet_TwoPersons_TakesTheOneInTheMiddle()
    {
        const int Grid = 64;
        float[] heat = new float[Grid * Grid * 17], centre = new float[Grid * Grid];
        centre[32 * Grid + 33] = 0.5f;
        centre[10 * Grid + 5] = 0.9f;
        for (var k = 0; k < 17; k++) (heat[(33 * Grid + 33) * 17 + k], heat[(10 * Grid + 6) * 17 + k]) = (0.4f, 0.8f);
        var found = MoveNetDecoder.Decode(new(heat, centre, new float[heat.Length * 2], new float[heat.Length * 2], Grid), OneToOne);
        Assert.All(found.X, x => Assert.Equal(33 * 4, x));
    }

    [Fact]
    public void MoveNet_MapsOfWrongSize_AreRefused()
    {
        float[] small = new float[10], centre = new float[64 * 64];
        Assert.ThrowsAny<ArgumentException>(() => MoveNetDecoder.Decode(new(small, centre, small, small, 64), OneToOne));
    }

    [Fact]
    public void BlazePose_HeatSpotBesideLandmark_MovesItToTheSpotsCentroid()
    {
        float[] landmarks = new float[39 * 5], heat = new float[64 * 64 * 39];
        const int Hip = 23;
        (landmarks[Hip * 5], landmarks[Hip * 5 + 1], landmarks[Hip * 5 + 3], landmarks[Hip * 5 + 4]) = (100, 120, 10, 10);
        heat[(31 * 64 + 26) * 39 + Hip] = 0.8f;
        heat[(31 * 64 + 27) * 39 + Hip] = 0.8f;
        var refined = BlazePoseDecoder.Decode(landmarks, heat, OneToOne, 0.5);
        var coarse = BlazePoseDecoder.Decode(landmarks, [], OneToOne, 0.5);
        var belowPeak = BlazePoseDecoder.Decode(landmarks, heat, OneToOne, 0.9);
        Assert.Equal(BlazePoseDecoder.CellCentre(26.5) * 4, refined.X[Hip], 3);
        Assert.Equal(BlazePoseDecoder.CellCentre(31) * 4, refined.Y[Hip], 3);
        Assert.Equal((100f, 120f), (coarse.X[Hip], coarse.Y[Hip]));
        Assert.Equal((100f, 120f), (belowPeak.X[Hip], belowPeak.Y[Hip]));
        Assert.InRange(refined.Score[Hip], 0.999, 1);
    }

    [Fact]
    public void NanoDet_OneHotCell_GivesTheBoxRoundItsCentre()
    {
        const int Stride = 16, Grid = 26, Row = 10, Column = 7;
        float[] scores = new float[Grid * Grid * 80], distances = new float[Grid * Grid * 44];
        const int Cell = Row * Grid + Column;
        scores[Cell * 80 + 17] = 0.7f;
        int[] bins = [2, 1, 3, 4];
        for (var k = 0; k < 4; k++) distances[(Cell * 4 + k) * 11 + bins[k]] = 50;
        var found = new List<Detection>();
        NanoDetDecoder.Decode(new(scores, distances, Stride), CropTransform.Letterbox(832, 832, 416), 0.5, found);
        var horse = Assert.Single(found);
        Assert.Equal(DetectedKind.Horse, horse.Kind);
        Assert.Equal(0.7f, horse.Score, 6);
        Assert.Equal(((Column + 0.5) - 2) * Stride * 2, horse.Box.X, 3);
        Assert.Equal(((Row + 0.5) - 1) * Stride * 2, horse.Box.Y, 3);
        Assert.Equal(5 * Stride * 2, horse.Box.Width, 3);
        Assert.Equal(5 * Stride * 2, horse.Box.Height, 3);
    }

    [Fact]
    public void NanoDet_FlatDistribution_ExpectsTheMiddle() =>
        Assert.Equal(5, NanoDetDecoder.Expectation(new float[11]), 9);

    [Fact]
    public void NanoDet_OverlappingBoxes_KeepTheBestOfEachKind()
    {
        List<Detection> found =
        [
            new(DetectedKind.Person, new(0, 0, 100, 200), 0.5), new(DetectedKind.Person, new(5, 5, 100, 200), 0.8),
            new(DetectedKind.Horse, new(0, 0, 100, 200), 0.4), new(DetectedKind.Person, new(300, 0, 100, 200), 0.3),
        ];
        Assert.Equal([0.8, 0.4, 0.3], NanoDetDecoder.Distinct(found, 0.6).Select(d => d.Score));
    }
}
