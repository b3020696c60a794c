using GaitSeat.Study.Definition;

namespace GaitSeat.Study.Tests.Definition;

public sealed class RowFilterTests
{
    private static readonly StudyTable Table = new(
        4, new Dictionary<string, double[]> { ["quality"] = [0.2, 0.5, double.NaN, 0.9] }, new Dictionary<string, string?[]> { ["gait"] = ["rising_trot", "walk", "rising_trot", null], ["rider"] = ["anna", "berta", "carl", "anna"] });

    [Theory]
    [InlineData("quality >= 0.5", "nyny")]
    [InlineData("quality > 0.5", "nnny")]
    [InlineData("quality<0.5", "ynnn")]
    [InlineData("quality <= 0.5", "yynn")]
    [InlineData("quality = 0.9", "nnny")]
    [InlineData("quality != 0.9", "yynn")]
    [InlineData("quality in 0.2, 0.9", "ynny")]
    [InlineData("gait = rising_trot", "ynyn")]
    [InlineData("gait != rising_trot", "nynn")]
    [InlineData("rider in anna, carl", "ynyy")]
    public void Condition_KeepsItsRows(string text, string kept) =>
        Assert.Equal(kept, string.Concat(RowFilter.Parse(text).Of(Table).Select(k => k ? 'y' : 'n')));

    [Theory]
    [InlineData("", "is no condition")]
    [InlineData("gait rising_trot", "is no condition")]
    [InlineData("gait =", "has no value")]
    [InlineData("rider in ,", "has no value")]
    [InlineData("quality > good", "'good', which is no number")]
    public void TextThatIsNoCondition_SaysWhatIsAllowed(string text, string message) =>
        Assert.Contains(message, Assert.Throws<FormatException>(() => RowFilter.Parse(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void SizeOfATextColumn_IsRefused() => Assert.Throws<ArgumentException>(() => RowFilter.Parse("rider > 3").Of(Table));
}
