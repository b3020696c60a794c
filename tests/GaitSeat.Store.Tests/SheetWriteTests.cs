using CsCheck;

namespace GaitSeat.Store.Tests;

public sealed class SheetWriteTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void Template_ListsTheClipsAndAsksForConsent()
    {
        SessionSheet.WriteTemplate(Sheet, ["b.mp4", "a, wide.mp4", "b.mp4"]);
        Assert.Equal(
            "clip_file,session_date,rider,horse,rider_stature_cm,thigh_cm,lower_leg_cm,stirrup_hole,leather_cm,rein,consent,note\n\"a, wide.mp4\",,,,,,,,,,,\nb.mp4,,,,,,,,,,,\n",
            File.ReadAllText(Sheet));
        Assert.Equal([(2, "consent"), (3, "consent")], SessionSheet.Read(Sheet, Days.Today).Errors.Select(e => (e.Line!.Value, e.Column!)));
    }

    [Fact]
    public void SheetThere_IsNotOverwritten()
    {
        File.WriteAllText(Sheet, "mine");
        Assert.Contains("not overwritten", Assert.Throws<IOException>(() => SessionSheet.WriteTemplate(Sheet, ["a.mp4"])).Message, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Sheet));
    }

    [Theory]
    [InlineData("note;clip_file;consent\r\n x ;A.mp4;yes", "\r\n;b.mp4;\r\n")]
    [InlineData("note;clip_file;consent\r\n x ;A.mp4;yes\r\n", ";b.mp4;\r\n")]
    [InlineData("clip_file,consent\n\"a.mp4\",yes\n\n", "b.mp4,\n")]
    public void Update_AppendsWhatIsMissingAndKeepsTheRest(string before, string appended)
    {
        File.WriteAllText(Sheet, before);
        Assert.Equal(1, SessionSheet.Update(Sheet, ["a.mp4", "b.mp4"]));
        Assert.Equal(before + appended, File.ReadAllText(Sheet));
        Assert.Equal(0, SessionSheet.Update(Sheet, ["a.mp4", "b.mp4"]));
        Assert.Equal(before + appended, File.ReadAllText(Sheet));
    }

    [Fact]
    public void Update_OfASheetWithoutClipColumn_Throws()
    {
        File.WriteAllText(Sheet, "clip,consent\n");
        Assert.Contains("clip_file", Assert.Throws<InvalidDataException>(() => SessionSheet.Update(Sheet, ["a.mp4"])).Message, StringComparison.Ordinal);
    }

    /// <summary>Whatever a file may be called, a template that lists it reads back to that name.</summary>
    [Fact]
    public void AnyFileName_SurvivesWritingAndReading() =>
        Gen.String[Gen.Char["abcÄß馬 ,;\"'.-_()[]"], 1, 12].Where(n => n.Trim().Length == n.Length && n is not "." and not "..").Sample(
            name =>
            {
                File.Delete(Sheet);
                SessionSheet.WriteTemplate(Sheet, [name]);
                File.WriteAllText(Sheet, File.ReadAllText(Sheet).TrimEnd('\n')[..^1] + "yes,\n");
                var result = SessionSheet.Read(Sheet, Days.Today);
                Assert.Empty(result.Errors);
                Assert.Equal([name], result.Sessions.Keys);
            },
            seed: "0000KH3TwKS3",
            iter: 300,
            threads: 1);

    public void Dispose() => _folder.Dispose();

    private string Sheet => _folder.File(SessionSheet.FileName);
}
