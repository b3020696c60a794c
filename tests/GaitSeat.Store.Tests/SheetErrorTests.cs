using System.Text;

namespace GaitSeat.Store.Tests;

public sealed class SheetErrorTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>Each error says line, column, what was found and what is allowed.</summary>
    [Theory]
    [InlineData("rider_stature_cm", "1.72", "90 to 220")]
    [InlineData("rider_stature_cm", "tall", "90 to 220")]
    [InlineData("rider_stature_cm", "NaN", "90 to 220")]
    [InlineData("rider_stature_cm", "89.9", "90 to 220")]
    [InlineData("rider_stature_cm", "220.1", "90 to 220")]
    [InlineData("thigh_cm", "19.9", "20 to 60")]
    [InlineData("thigh_cm", "60.1", "20 to 60")]
    [InlineData("lower_leg_cm", "61", "20 to 60")]
    [InlineData("stirrup_hole", "-1", "0 to 30")]
    [InlineData("stirrup_hole", "31", "0 to 30")]
    [InlineData("leather_cm", "19", "20 to 100")]
    [InlineData("leather_cm", "101", "20 to 100")]
    [InlineData("session_date", "31.05.2026", "2026-05-31")]
    [InlineData("session_date", "2026-02-30", "2026-05-31")]
    [InlineData("rein", "both", "left or right")]
    public void ValueNotAllowed_IsNamedWithPlaceAndRemedy(string column, string value, string allowed)
    {
        var error = Assert.Single(Read($"clip_file,consent,{column}\na.mp4,yes,\nb.mp4,yes,{value}\n").Errors);
        Assert.Equal((3, column), (error.Line, error.Column));
        Assert.Contains($"'{value}'", error.Message, StringComparison.Ordinal);
        Assert.Contains(allowed, error.Message, StringComparison.Ordinal);
        Assert.StartsWith($"line 3, column {column}: ", error.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rider_stature_cm", "90")]
    [InlineData("rider_stature_cm", "220")]
    [InlineData("thigh_cm", "20")]
    [InlineData("lower_leg_cm", "60")]
    [InlineData("stirrup_hole", "0")]
    [InlineData("stirrup_hole", "4.5")]
    [InlineData("leather_cm", "100")]
    public void ValueOnTheBound_IsAllowed(string column, string value) =>
        Assert.Empty(Read($"clip_file,consent,{column}\na.mp4,yes,{value}\n").Errors);

    [Theory]
    [InlineData("")]
    [InlineData("maybe")]
    [InlineData("y")]
    public void ConsentNotYesOrNo_IsAnErrorAndNoSession(string consent)
    {
        var result = Read($"clip_file,consent\na.mp4,{consent}\n");
        Assert.Contains("yes or no", Assert.Single(result.Errors).Message, StringComparison.Ordinal);
        Assert.Empty(result.Sessions);
    }

    [Theory]
    [InlineData("../a.mp4")]
    [InlineData("day1/a.mp4")]
    [InlineData("day1\\a.mp4")]
    [InlineData("C:a.mp4")]
    [InlineData("/a.mp4")]
    [InlineData("..")]
    public void ClipFileWithFolders_IsRefused(string name)
    {
        var error = Assert.Single(Read($"clip_file,consent\n{name},yes\n").Errors);
        Assert.Equal("clip_file", error.Column);
        Assert.Contains("within the clip folder", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void DotsWithinAName_AreAllowed() => Assert.Empty(Read("clip_file,consent\na..b.mp4,yes\n").Errors);

    [Fact]
    public void AllErrors_AreReportedAtOnceInOrderOfLines()
    {
        var result = Read("clip_file,consent,rein,thigh_cm\na.mp4,perhaps,up,1\nb.mp4,yes,left,40\nA.MP4,yes,,\n,yes,,\n");
        Assert.Equal(
            [(2, "consent"), (2, "rein"), (2, "thigh_cm"), (4, "clip_file"), (5, "clip_file")],
            result.Errors.Select(e => (e.Line!.Value, e.Column!)).Order());
        Assert.Equal(["b.mp4"], result.Sessions.Keys);
    }

    [Fact]
    public void ClipListedTwice_NamesTheFirstLine()
    {
        var error = Assert.Single(Read("clip_file,consent\na.mp4,yes\nA.mp4,no\n").Errors);
        Assert.Equal(3, error.Line);
        Assert.Contains("line 2", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clip_file,rider\na.mp4,R\n", "consent")]
    [InlineData("clip;consent\na.mp4;yes\n", "clip_file")]
    [InlineData("clip_file,consent,rein,REIN\na.mp4,yes,left,right\n", "rein")]
    public void HeaderWrong_NamesTheColumn(string text, string column)
    {
        var result = Read(text);
        Assert.Equal(column, Assert.Single(result.Errors).Column);
        Assert.Empty(result.Sessions);
    }

    [Fact]
    public void LineNumber_CountsBreaksInsideQuotesAndBlankLines()
    {
        var error = Assert.Single(Read("clip_file,consent,note\r\na.mp4,yes,\"two\r\nlines\"\r\n\r\nb.mp4,perhaps,\r\n").Errors);
        Assert.Equal(5, error.Line);
    }

    [Theory]
    [InlineData("clip_file,consent,note\na.mp4,yes,\"never closed\n")]
    [InlineData("clip_file,consent,note\na.mp4,yes,\"half\" open\n")]
    [InlineData("clip_file,consent,note\na.mp4,yes,stray\"quote\n")]
    public void StrayQuote_IsAnErrorWithItsLine(string text)
    {
        var error = Read(text).Errors[0];
        Assert.Equal(2, error.Line);
        Assert.Contains("quote", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TooManyFields_IsAnError() =>
        Assert.Contains("4 fields", Assert.Single(Read("clip_file,consent,note\na.mp4,yes,windy, cold\n").Errors).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("utf-32")]
    public void Utf16_IsAClearError(string name)
    {
        File.WriteAllText(Sheet, "clip_file,consent\na.mp4,yes\n", Encoding.GetEncoding(name));
        Assert.Contains("UTF-16", Assert.Single(SessionSheet.Read(Sheet, Days.Today).Errors).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Utf16WithoutMark_IsAClearError()
    {
        File.WriteAllBytes(Sheet, Encoding.Unicode.GetBytes("clip_file,consent\na.mp4,yes\n"));
        Assert.Contains("UTF-8", Assert.Single(SessionSheet.Read(Sheet, Days.Today).Errors).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Latin1_IsAClearErrorWithItsLine()
    {
        File.WriteAllBytes(Sheet, Encoding.Latin1.GetBytes("clip_file,consent\na.mp4,yes\nprüfung.mp4,yes\n"));
        var error = Assert.Single(SessionSheet.Read(Sheet, Days.Today).Errors);
        Assert.Equal(3, error.Line);
        Assert.Contains("0xFC", error.Message, StringComparison.Ordinal);
        Assert.Contains("UTF-8", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    public void EmptyFile_IsAnError(string text) => Assert.Contains("empty", Assert.Single(Read(text).Errors).Message, StringComparison.Ordinal);

    [Fact]
    public void FileNotThere_IsAnError() => Assert.Contains("no session sheet", Assert.Single(SessionSheet.Read(Sheet, Days.Today).Errors).Message, StringComparison.Ordinal);

    public void Dispose() => _folder.Dispose();

    private string Sheet => _folder.File(SessionSheet.FileName);

    private SheetResult Read(string text)
    {
        File.WriteAllText(Sheet, text);
        return SessionSheet.Read(Sheet, Days.Today);
    }
}
