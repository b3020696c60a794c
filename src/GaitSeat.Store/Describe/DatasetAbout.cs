using System.Text.Json;
using System.Text.RegularExpressions;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>What only people can say of a dataset; kept in <c>about.json</c> in the dataset's folder, so that it is said once.</summary>
/// <param name="Title">A line.</param>
/// <param name="Creator">Who made the dataset: a person, a school.</param>
/// <param name="Licence">An SPDX identifier such as <c>CC-BY-4.0</c>, or the address of a licence; null where none is given: others may then do nothing with it without asking.</param>
/// <param name="Url">Where the dataset can be had; null where nowhere.</param>
public sealed partial record DatasetAbout(string? Title = null, string? Creator = null, string? Licence = null, string? Url = null)
{
    internal const string FileName = "about.json";
    private static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, WriteIndented = true, UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow };

    /// <summary>What was said before, with what is said now laid over it and kept for the next time.</summary>
    /// <exception cref="DatasetException">The file is no such file, or a value is not allowed.</exception>
    public static DatasetAbout Keep(string datasetFolder, DatasetAbout said)
    {
        ArgumentNullException.ThrowIfNull(said);
        var path = Path.Combine(datasetFolder, FileName);
        var before = Read(path);
        var about = new DatasetAbout(said.Title ?? before.Title, said.Creator ?? before.Creator, said.Licence ?? before.Licence, said.Url ?? before.Url);
        about.Check(path);
        if (about != before) AtomicFile.WriteText(path, JsonSerializer.Serialize(about, Format) + "\n");
        return about;
    }

    internal string TitleOrNot => Title ?? "Strides measured by GaitSeat";

    internal string CreatorOrNot => Creator ?? "not named";

    /// <summary>Address of the licence's text.</summary>
    internal string? LicenceUrl => Licence is null ? null : IsAddress(Licence) ? Licence : $"https://spdx.org/licenses/{Licence}.html";

    private static DatasetAbout Read(string path)
    {
        if (!File.Exists(path)) return new();
        try
        {
            return JsonSerializer.Deserialize<DatasetAbout>(File.ReadAllText(path), Format) ?? new();
        }
        catch (JsonException e)
        {
            throw new DatasetException($"'{path}' cannot be used ({e.Message}). It is JSON with title, creator, licence and url, each a text or left away.", e);
        }
    }

    private void Check(string path)
    {
        if (Licence is not null && !IsAddress(Licence) && !Spdx().IsMatch(Licence))
            throw new DatasetException($"licence '{Licence}' ({path} or --licence): an SPDX identifier such as CC-BY-4.0 or an address with https:// is allowed.");
        if (Url is not null && !IsAddress(Url)) throw new DatasetException($"url '{Url}' ({path} or --url): an address with https:// is allowed.");
    }

    private static bool IsAddress(string text) => Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http";

    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9.+\-]*$")]
    private static partial Regex Spdx();
}
