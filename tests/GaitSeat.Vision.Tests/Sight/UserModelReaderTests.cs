using GaitSeat.Model;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;
using GaitSeat.Vision.Tests.Models;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class UserModelReaderTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("user-reader-");

    public void Dispose() => _folder.Delete(recursive: true);

    // An upright input of 24 x 32 over a rider 200 px tall, crop factor 1.2: a square of 240 px about (190, 160), of which the middle
    // 180 px across is shown; a cell of the 12 x 16 maps is 15 px, the first one's corner at (100, 40).
    [Fact]
    public void UprightModelThroughReader_GivesThePlacesOfThePicture()
    {
        var model = UserModel.Open(HeatmapModel.Write(_folder.FullName, 24, 32));
        using var frame = new Frame(0, 0, 400, 300);
        frame.Rgb.Clear();
        PointPx red = new(152.5, 122.5), green = new(227.5, 227.5);
        Paint(frame, red, channel: 0);
        Paint(frame, green, channel: 1);
        using var reader = new BodyPointReader(model, heavy: null, new() { BoxCropFactor = 1.2 }, workers: 1);

        var pose = reader.Read(0, frame, new(150, 60, 80, 200), 0);

        Assert.Null(pose.Second);
        Assert.Equal(17, pose.First.Count);
        for (var k = 0; k < pose.First.Count; k++)
        {
            Assert.InRange(pose.First[k].DistanceTo(k % 2 == 0 ? red : green), 0, 1);
            Assert.Equal(1, pose.First.Score[k]);
        }
    }

    private static void Paint(Frame frame, PointPx middle, int channel)
    {
        for (var y = (int)(middle.Y - 7.5); y < middle.Y + 7.5; y++)
            for (var x = (int)(middle.X - 7.5); x < middle.X + 7.5; x++)
                frame.Rgb[(y * frame.WidthPx + x) * 3 + channel] = 255;
    }
}
