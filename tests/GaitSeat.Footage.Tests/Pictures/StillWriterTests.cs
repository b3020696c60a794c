using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Tests.Pictures;

public sealed class StillWriterTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("stills").FullName;

    [Fact]
    public void Png_HasEveryPixel()
    {
        using var frame = Scenes.Noise(33, 21);
        var path = Path.Combine(_folder, "a.png");
        StillWriter.SavePng(frame, path);
        using var read = SKBitmap.Decode(path);
        Assert.Equal((33, 21), (read.Width, read.Height));
        for (var i = 0; i < 33 * 21; i++)
        {
            var pixel = read.GetPixel(i % 33, i / 33);
            Assert.Equal(frame.Rgb.Slice(3 * i, 3), [pixel.Red, pixel.Green, pixel.Blue]);
        }
    }

    [Fact]
    public void Jpeg_LooksTheSame()
    {
        using var frame = new Frame(0, 0, 64, 48);
        for (var i = 0; i < 64 * 48; i++) (frame.Rgb[3 * i], frame.Rgb[3 * i + 1], frame.Rgb[3 * i + 2]) = ((byte)(i % 64 * 3), 90, 160);
        var path = Path.Combine(_folder, "a.jpg");
        StillWriter.SaveJpeg(frame, path);
        Assert.Equal([0xFF, 0xD8, 0xFF], File.ReadAllBytes(path)[..3]);
        using var read = SKBitmap.Decode(path);
        Assert.InRange(read.GetPixel(32, 20).Red, 90, 102);
        Assert.InRange(read.GetPixel(32, 20).Blue, 154, 166);
    }

    [Fact]
    public void FileThatIsThere_ReplacedAndNothingLeftBeside()
    {
        using var frame = Scenes.Noise(8, 8);
        var path = Path.Combine(_folder, "a.png");
        File.WriteAllText(path, "old");
        StillWriter.SavePng(frame, path);
        Assert.Equal([path], Directory.GetFiles(_folder));
        Assert.True(new FileInfo(path).Length > 100);
    }

    [Fact]
    public void FolderMissing_IoErrorThatNamesIt()
    {
        using var frame = Scenes.Noise(8, 8);
        var error = Assert.ThrowsAny<IOException>(() => StillWriter.SavePng(frame, Path.Combine(_folder, "none", "a.png")));
        Assert.Contains("none", error.Message, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
