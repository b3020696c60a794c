using System.Text.Json;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Import;

/// <summary>Reads the weight files that a topology's manifest names.</summary>
internal static class WeightReader
{
    public static Dictionary<string, Constant> Read(string topologyPath, JsonElement manifest)
    {
        var weights = new Dictionary<string, Constant>();
        foreach (var group in manifest.EnumerateArray())
        {
            string[] paths = [.. group.GetProperty("paths").EnumerateArray().Select(p => Beside(topologyPath, p.GetString()!))];
            WeightFormat[] formats = [.. group.GetProperty("weights").EnumerateArray().Select(w => WeightFormat.Read(topologyPath, w))];
            var bytes = ReadAll(paths, formats.Sum(f => f.ByteCount));
            var at = 0;
            foreach (var format in formats)
            {
                weights[format.Name] = WeightDecoder.Decode(format, bytes.AsSpan(at, format.ByteCount));
                at += format.ByteCount;
            }
        }

        return weights;
    }

    private static byte[] ReadAll(string[] paths, long expected)
    {
        if (paths.FirstOrDefault(p => !File.Exists(p)) is { } missing)
        {
            throw new ModelException($"weights file not found: {missing}; {Restore.Remedy}");
        }

        byte[] bytes = [.. paths.SelectMany(File.ReadAllBytes)];
        return bytes.Length == expected
            ? bytes
            : throw new ModelException(
                $"weights file {string.Join(" + ", paths)} has {bytes.Length} bytes, the topology expects {expected}; {Restore.Remedy}");
    }

    // A manifest may only name files of its own folder.
    private static string Beside(string topologyPath, string name) =>
        name.Length > 0 && Path.GetFileName(name) == name
            ? Path.Combine(Path.GetDirectoryName(topologyPath) ?? "", name)
            : throw new ModelException($"{topologyPath} names the weights file '{name}'; allowed: a file name without folders");
}
