using System.Security.Cryptography;
using System.Text;

namespace GaitSeat.Pipeline.Settings;

/// <summary>Names a set of settings by what they do: two files that lead to the same numbers have the same hash.</summary>
public static class PipelineHash
{
    /// <summary>
    /// SHA-256, lower-case hex, over the canonical text of every setting that can change a number. Where a user's own model lies is no such
    /// setting: what is in the file is part of the model hash.
    /// </summary>
    public static string Of(PipelineSettings settings)
    {
        var numbers = settings with { Output = new(), Run = new(), BodyPoints = settings.BodyPoints with { UserModel = null } };
        var text = SettingsWriter.Write(numbers, docs: null);
        // The settings of the worker and of the fault models came later and change no measured number: without them the hashes in old rows still hold.
        text = text[..(text.IndexOf("\nwatch:\n", StringComparison.Ordinal) + 1)];
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }
}
