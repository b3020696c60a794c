using System.Text.RegularExpressions;

namespace GaitSeat.Store.Tests;

public sealed class PseudonymKeyTests : IDisposable
{
    private const string Passphrase = "a horse with four stirrups";
    private readonly TemporaryFolder _folder = new();

    private string File => _folder.File("names.key");

    [Fact]
    public void Names_ComeBack_AndStandNowhereInTheFile()
    {
        Save(("R07", "Anna Bergström"), ("R08", "Bo Lind"));
        var key = PseudonymKey.Open(File, Passphrase);
        Assert.Equal(["R07", "R08"], key.Pseudonyms);
        Assert.Equal("Anna Bergström", key.NameOf("R07"));
        Assert.Null(key.NameOf("R09"));
        Assert.Equal(["R08"], key.Find(" bo LIND "));
        var text = System.IO.File.ReadAllText(File);
        Assert.DoesNotContain("R07", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Berg", text, StringComparison.Ordinal);
        Assert.Contains("\"Rounds\":600000", text, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, System.IO.File.GetUnixFileMode(File));
    }

    [Fact]
    public void SavedTwice_IsSealedAnew()
    {
        Save(("R07", "Anna Berg"));
        var first = System.IO.File.ReadAllText(File);
        Save(("R07", "Anna Berg"));
        Assert.NotEqual(first, System.IO.File.ReadAllText(File));
    }

    [Fact]
    public void WrongPassphrase_IsToldAndOpensNothing()
    {
        Save(("R07", "Anna Berg"));
        Assert.Contains("passphrase is another one", Assert.Throws<KeyFileException>(() => PseudonymKey.Open(File, "a horse with three stirrups")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Text")]
    [InlineData("Tag")]
    [InlineData("Nonce")]
    [InlineData("Salt")]
    [InlineData("Rounds")]
    public void ChangedFile_DoesNotOpen(string part)
    {
        Save(("R07", "Anna Berg"));
        var text = System.IO.File.ReadAllText(File);
        var changed = part == "Rounds" ? text.Replace("600000", "1000", StringComparison.Ordinal)
            : Regex.Replace(text, $"(?<=\"{part}\":\")(.)", m => m.Value == "A" ? "B" : "A");
        Assert.NotEqual(text, changed);
        System.IO.File.WriteAllText(File, changed);
        Assert.Contains("file was changed", Assert.Throws<KeyFileException>(() => PseudonymKey.Open(File, Passphrase)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not JSON")]
    [InlineData("{}")]
    [InlineData("{\"Format\":\"gaitseat-key\",\"Version\":1,\"Rounds\":2000000000,\"Salt\":\"AAAAAAAAAAAAAAAAAAAAAA==\",\"Nonce\":\"AAAAAAAAAAAAAAAA\",\"Tag\":\"AAAAAAAAAAAAAAAAAAAAAA==\",\"Text\":\"\"}")]
    public void DamagedFile_IsTold(string text)
    {
        System.IO.File.WriteAllText(File, text);
        Assert.Contains("is damaged", Assert.Throws<KeyFileException>(() => PseudonymKey.Open(File, Passphrase)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoFile_AndANewerOne_AreTold()
    {
        Assert.Contains("no key file", Assert.Throws<KeyFileException>(() => PseudonymKey.Open(File, Passphrase)).Message, StringComparison.Ordinal);
        Save(("R07", "Anna Berg"));
        System.IO.File.WriteAllText(File, System.IO.File.ReadAllText(File).Replace("\"Version\":1", "\"Version\":2", StringComparison.Ordinal));
        Assert.Contains("of version 2", Assert.Throws<KeyFileException>(() => PseudonymKey.Open(File, Passphrase)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("anna-berg-trot.mp4", "R07")]
    [InlineData("2026_ANNABERG.mov", "R07")]
    [InlineData("lesson berg 3.mp4", "R07")]
    [InlineData("heron-2026.mp4", null)]
    public void NamesInFileNames_AreFound(string file, string? rider)
    {
        var key = new PseudonymKey();
        key.Set("R07", "Anna Berg");
        key.Set("R08", "Bo Li");
        Assert.Equal(rider is null ? [] : [rider], key.NamedIn(file));
    }

    [Theory]
    [InlineData("Anna_Berg-2026.mp4", true)]
    [InlineData("AnnaBerg.mov", true)]
    [InlineData("Lesson Anna Berg.mp4", true)]
    [InlineData("2026-05-31 Jörg.Müller.mp4", true)]
    [InlineData("heron-2026-03-07.mp4", false)]
    [InlineData("Rising_Trot Left.mp4", false)]
    [InlineData("IMG_1234.MOV", false)]
    [InlineData("VID-20260531-WA0007.mp4", false)]
    [InlineData("Anna.mp4", false)]
    [InlineData("R07_Trot.mp4", false)]
    public void WhatLooksLikeAName(string file, bool looks) => Assert.Equal(looks, PersonName.LooksLikeOneIn(file));

    [Fact]
    public void Sheet_WarnsOfANameInAFileName_WithoutRepeatingIt()
    {
        System.IO.File.WriteAllText(_folder.File(SessionSheet.FileName), "clip_file,rider,consent\nAnna_Berg.mp4,R07,yes\nheron-1.mp4,R08,yes\n");
        var warning = Assert.Single(SessionSheet.Read(_folder.File(SessionSheet.FileName), Days.Today).Warnings);
        Assert.Equal((2, "clip_file"), (warning.Line, warning.Column));
        Assert.DoesNotContain("Anna", warning.ToString(), StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    private void Save(params (string Pseudonym, string Name)[] names)
    {
        var key = new PseudonymKey();
        foreach (var (pseudonym, name) in names) key.Set(pseudonym, name);
        key.Save(File, Passphrase);
    }
}
