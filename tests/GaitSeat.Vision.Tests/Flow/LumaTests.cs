using CsCheck;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

public sealed class LumaTests
{
    [Fact]
    public void Row_IsPixelByPixelTheSame() =>
        Gen.Byte.Array[0, 300].Sample(bytes =>
        {
            var luma = new int[bytes.Length / 3];
            Luma.Of(bytes.AsSpan(0, 3 * luma.Length), luma);
            return luma.Index().All(l => l.Item == Luma.Of(bytes[3 * l.Index], bytes[(3 * l.Index) + 1], bytes[(3 * l.Index) + 2]));
        }, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Brightness_IsTheSameAsANumber() =>
        Gen.Byte.Array[0, 100].Sample(bytes =>
        {
            var values = new int[bytes.Length];
            Luma.Widen(bytes, values);
            return values.SequenceEqual(bytes.Select(b => (int)b));
        }, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void White_IsTheWholeOf255() => Assert.Equal(255 * Luma.Whole, Luma.Of(255, 255, 255));
}
