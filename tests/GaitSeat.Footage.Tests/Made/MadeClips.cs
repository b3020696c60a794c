using System.Collections.Concurrent;
using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Footage.Tests;

[assembly: AssemblyFixture(typeof(MadeClips))]

namespace GaitSeat.Footage.Tests;

/// <summary>Clips made by FFmpeg in a temporary folder: each once, when a test first asks for it, and gone at the end.</summary>
public sealed class MadeClips : IDisposable
{
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> _made = new();

    public FfmpegTools Tools { get; } = FfmpegTools.Locate();

    public string Folder { get; } = Directory.CreateTempSubdirectory("gaitseat-footage-").FullName;

    /// <summary>The file of that name, made by <paramref name="make"/> (which gets its path) if it is not there yet.</summary>
    public Task<string> OnceAsync(string name, Func<string, Task> make) =>
        _made.GetOrAdd(name, _ => new Lazy<Task<string>>(async () =>
        {
            var path = Path.Combine(Folder, name);
            await make(path);
            return path;
        })).Value;

    /// <summary>The file of that name, made by <c>ffmpeg ... name</c>.</summary>
    public Task<string> ByFfmpegAsync(string name, string arguments) =>
        OnceAsync(name, path => RunAsync([.. arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries), path]));

    public string NewPath(string name) => Path.Combine(Directory.CreateDirectory(Path.Combine(Folder, Guid.NewGuid().ToString("N"))).FullName, name);

    public async Task<byte[]> RunAsync(params string[] arguments)
    {
        var start = new ProcessStartInfo(Tools.FfmpegPath) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var argument in (string[])["-nostdin", "-hide_banner", "-v", "error", "-y", .. arguments]) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        using var output = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(output);
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"ffmpeg {string.Join(' ', arguments)}\n{await messages}");
        return output.ToArray();
    }

    /// <summary>Skips the test if this FFmpeg was built without an encoder.</summary>
    public async Task NeedEncoderAsync(string encoder)
    {
        var list = System.Text.Encoding.UTF8.GetString(await RunAsync("-encoders"));
        if (!list.Contains($" {encoder} ", StringComparison.Ordinal)) Assert.Skip($"This FFmpeg has no encoder {encoder} to make the clip with.");
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
