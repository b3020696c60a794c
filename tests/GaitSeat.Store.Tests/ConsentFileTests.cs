using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class ConsentFileTests : IDisposable
{
    private const string Rows = "clip_file,rider,consent\na.mp4,R07,yes\nb.mp4,R08,yes\nc.mp4,R09,no\nd.mp4,,yes\n";

    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void WithoutTheFile_TheSheetsYesHoldsForEverything()
    {
        var row = Read(null).Sessions["a.mp4"];
        Assert.Equal(ConsentTerms.Unlimited, row.Terms);
        Assert.All([ConsentUse.Measure, ConsentUse.Show, ConsentUse.Study, ConsentUse.Export, ConsentUse.Report], use => Assert.Null(row.Against(use)));
    }

    [Fact]
    public void Scope_HoldsForWhatItNamesAlone()
    {
        var row = Read("rider,scope,until\nr07,Measure show,\n").Sessions["a.mp4"];
        Assert.True(row.Consent);
        Assert.Null(row.Against(ConsentUse.Show));
        Assert.Equal("consent_without_export", row.Against(ConsentUse.Export)!.Reason);
        Assert.Contains("R07 does not cover 'report'", row.Against(ConsentUse.Report)!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-06-01", true)]
    [InlineData("2026-05-31", false)]
    public void LastDay_StillHolds_AndTheNextNoMore(string until, bool holds)
    {
        var row = Read($"rider,scope,until\nR07,all,{until}\n").Sessions["a.mp4"];
        Assert.Equal(holds, row.Consent);
        Assert.Equal(holds ? null : "consent_ended", row.Against(ConsentUse.Measure)?.Reason);
    }

    [Fact]
    public void RiderWhomTheFileDoesNotName_HasAgreedToNothing()
    {
        var rows = Read("rider,scope\nR07,all\nR09,all\n").Sessions;
        Assert.Equal("not_in_consent_file", rows["b.mp4"].Against(ConsentUse.Measure)!.Reason);
        Assert.False(rows["b.mp4"].Consent);
        // A no stays a no, and a row without a rider cannot be looked up.
        Assert.Equal("no_consent", rows["c.mp4"].Against(ConsentUse.Measure)!.Reason);
        Assert.Equal("not_in_consent_file", rows["d.mp4"].Against(ConsentUse.Show)!.Reason);
    }

    [Fact]
    public void ScopeWithoutMeasuring_IsNoConsentToMeasure() => Assert.False(Read("rider,scope\nR07,show\n").Sessions["a.mp4"].Consent);

    [Theory]
    [InlineData("rider,scope\nR07,\n", "consent.csv: line 2, column scope: found ''")]
    [InlineData("rider,scope\nR07,measure film\n", "consent.csv: line 2, column scope: found 'film'")]
    [InlineData("rider,scope\n,all\n", "consent.csv: line 2, column rider")]
    [InlineData("rider,scope\nR07,all\nr07,none\n", "consent.csv: line 3, column rider: found 'r07'; the rider stands in the file already")]
    [InlineData("rider,scope,until\nR07,all,tomorrow\n", "consent.csv: line 2, column until: found 'tomorrow'")]
    [InlineData("rider,until\nR07,\n", "consent.csv: line 1, column scope: the column is missing")]
    [InlineData("", "consent.csv: ")]
    public void WhatIsWrong_IsToldWithFileLineAndColumn(string consent, string told) =>
        Assert.Contains(Read(consent).Errors, e => e.ToString().StartsWith(told, StringComparison.Ordinal));

    [Fact]
    public void ConsentThatEndsSoon_IsWarnedOf()
    {
        var warnings = Read("rider,scope,until\nR07,all,2026-06-20\nR08,all,2026-12-31\nR99,all,2026-06-05\n").Warnings;
        Assert.StartsWith("consent.csv: the consent of rider R07 ends with 2026-06-20", Assert.Single(warnings).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Template_AsksForAScope()
    {
        var path = _folder.File(ConsentFile.FileName);
        ConsentFile.WriteTemplate(path, ["R07", "R08"]);
        Assert.Equal(2, Read(File.ReadAllText(path)).Errors.Count(e => e.Column == "scope"));
        Assert.Throws<IOException>(() => ConsentFile.WriteTemplate(path, ["R09"]));
    }

    [Fact]
    public void Words_ReadBack() =>
        Assert.Null(Read($"rider,scope\nR07,{ConsentFile.Words(ConsentUse.Everything)}\n").Sessions["a.mp4"].Against(ConsentUse.Export));

    public void Dispose() => _folder.Dispose();

    private SheetResult Read(string? consent)
    {
        File.WriteAllText(_folder.File(SessionSheet.FileName), Rows);
        if (consent is not null) File.WriteAllText(_folder.File(ConsentFile.FileName), consent);
        return SessionSheet.Read(_folder.File(SessionSheet.FileName), Days.Today);
    }
}
