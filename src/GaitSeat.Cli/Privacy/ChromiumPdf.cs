using System.Diagnostics;

namespace GaitSeat.Cli.Privacy;

/// <summary>Prints a page to PDF with a Chromium that is installed, without a window and without asking anything of the network.</summary>
internal static class ChromiumPdf
{
    private const string Variable = "GAITSEAT_CHROMIUM";
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "chrome"];
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <returns>Full path; null where none is installed.</returns>
    public static string? Find() => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } told
        ? File.Exists(told) ? told : null
        : Names.SelectMany(n => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator), (name, folder) => Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name)).FirstOrDefault(File.Exists);

    /// <exception cref="IOException">It did not come to an end, or wrote no PDF; the message says what it said.</exception>
    public static async Task PrintAsync(string chromium, string htmlPath, string pdfPath, CancellationToken ct)
    {
        // A profile of its own that goes with it: nothing of the page stays in the user's browser.
        var profile = Directory.CreateTempSubdirectory("gaitseat-print-").FullName;
        var part = Path.Combine(profile, "page.pdf");
        var start = new ProcessStartInfo(chromium) { RedirectStandardError = true, RedirectStandardOutput = true };
        string[] arguments =
        [
            "--headless", "--disable-gpu", "--no-first-run", "--disable-extensions", "--host-resolver-rules=MAP * ~NOTFOUND", $"--user-data-dir={profile}",
            "--no-pdf-header-footer", $"--print-to-pdf={part}", new Uri(Path.GetFullPath(htmlPath)).AbsoluteUri,
        ];
        // Chromium's sandbox does not work for root, as in a container.
        foreach (var argument in Environment.UserName == "root" ? arguments.Prepend("--no-sandbox") : arguments) start.ArgumentList.Add(argument);
        try
        {
            using var process = Process.Start(start) ?? throw new IOException($"'{chromium}' could not be started.");
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(ct);
            limit.CancelAfter(Patience);
            var (said, _) = (process.StandardError.ReadToEndAsync(limit.Token), process.StandardOutput.ReadToEndAsync(limit.Token));
            try
            {
                await process.WaitForExitAsync(limit.Token);
            }
            catch (OperationCanceledException)
            {
                process.Kill(entireProcessTree: true);
                ct.ThrowIfCancellationRequested();
                throw new IOException($"'{chromium}' did not come to an end within {Patience.TotalMinutes:0} minutes.");
            }

            if (process.ExitCode != 0 || !File.Exists(part)) throw new IOException($"'{chromium}' wrote no PDF: {(await said).Trim().Split('\n')[^1]}");
            File.Copy(part, pdfPath, overwrite: true);
        }
        finally
        {
            Directory.Delete(profile, recursive: true);
        }
    }
}
