using System.Text;

namespace GaitSeat.Store.Tests;

public sealed class SheetReadTests : IDisposable
{
    private const string Full =
        """"
        clip_file,session_date,rider,horse,rider_stature_cm,thigh_cm,lower_leg_cm,stirrup_hole,leather_cm,rein,consent,note,Trainer
        a.mp4,2026-05-31,R07,H3,171.5,41,42.5,9,62.5,Left,YES,"windy, with ""gusts""",T1
        b.mp4,,,,,,,,,,no,,
        """";

    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void FullRow_IsReadInFull()
    {
        var result = Read(Full);
        Assert.Empty(result.Errors);
        Assert.Empty(result.Warnings);
        var s = result.Sessions["A.MP4"];
        Assert.Equal(new DateOnly(2026, 5, 31), s.SessionDate);
        Assert.Equal("2026", s.Season);
        Assert.Equal(("R07", "H3", "left", true), (s.Rider, s.Horse, s.Rein, s.Consent));
        Assert.Equal((171.5, 41.0, 42.5), (s.Lengths.StatureCm, s.Lengths.ThighCm, s.Lengths.LowerLegCm));
        Assert.Equal((9.0, 62.5), (s.StirrupHole, s.LeatherCm));
        Assert.Equal("windy, with \"gusts\"", s.Note);
        Assert.Equal(new Dictionary<string, string> { ["trainer"] = "T1" }, s.Extra);
    }

    [Fact]
    public void EmptyOptionalFields_AreUnknown()
    {
        var s = Read(Full).Sessions["b.mp4"];
        Assert.False(s.Consent);
        Assert.True(s.Lengths.IsUnknown);
        Assert.Null(s.SessionDate);
        Assert.Null(s.Season);
        Assert.Null(s.Rein);
        Assert.Null(s.Note);
        Assert.Empty(s.Extra);
    }

    [Fact]
    public void OnlyRequiredColumns_AreEnough() => Assert.Single(Read("clip_file,consent\na.mp4,yes\n").Sessions);

    [Fact]
    public void SeasonColumn_WinsOverTheYear() =>
        Assert.Equal("winter 26/27", Read("clip_file,consent,session_date,season\na.mp4,yes,2027-01-02,winter 26/27\n").Sessions["a.mp4"].Season);

    [Fact]
    public void Semicolons_AreFoundAndTakeADecimalComma() =>
        Assert.Equal(172.5, Read("clip_file;rider_stature_cm;consent\r\na.mp4;172,5;yes\r\n").Sessions["a.mp4"].Lengths.StatureCm);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Utf8_WithOrWithoutMark_IsRead(bool mark)
    {
        File.WriteAllText(Sheet, "clip_file,consent,note\nprüfung.mp4,yes,weiß\n", new UTF8Encoding(mark));
        var result = SessionSheet.Read(Sheet, Days.Today);
        Assert.Empty(result.Errors);
        Assert.Equal("weiß", result.Sessions["prüfung.mp4"].Note);
    }

    [Fact]
    public void SpacesAndBlankLines_DoNotMatter()
    {
        var result = Read("\n Clip_File , CONSENT \n\n  a.mp4 ,  yes \n\n,,\n");
        Assert.Empty(result.Errors);
        Assert.Equal(["a.mp4"], result.Sessions.Keys);
    }

    [Theory]
    [InlineData("Anna Berg", true)]
    [InlineData("Berg, Anna", true)]
    [InlineData("Anna-Lena von der Heide", true)]
    [InlineData("R07", false)]
    [InlineData("rider seven", false)]
    [InlineData("Rider 7", false)]
    [InlineData("Anna", false)]
    public void RiderThatLooksLikeAFullName_IsWarnedAboutAndKept(string rider, bool warned)
    {
        var result = Read($"clip_file,rider,consent\na.mp4,\"{rider}\",yes\n");
        Assert.Empty(result.Errors);
        Assert.Equal(warned ? 1 : 0, result.Warnings.Count);
        Assert.Equal(rider, result.Sessions["a.mp4"].Rider);
    }

    public void Dispose() => _folder.Dispose();

    private string Sheet => _folder.File(SessionSheet.FileName);

    private SheetResult Read(string text)
    {
        File.WriteAllText(Sheet, text);
        return SessionSheet.Read(Sheet, Days.Today);
    }
}
