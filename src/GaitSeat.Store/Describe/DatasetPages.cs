using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>The pages that make a compacted dataset stand on its own: what it is, what its columns mean, for people and for programs.</summary>
public static class DatasetPages
{
    private const string DictionaryFile = "data-dictionary.md";

    /// <summary>Writes them anew into the compact folder.</summary>
    /// <param name="published">The day that the pages give as the day of publication.</param>
    /// <exception cref="DatasetException">The dataset cannot be read, or the pages cannot be written.</exception>
    public static void Write(string datasetFolder, DatasetAbout about, DateOnly published, string softwareVersion)
    {
        var folder = Path.GetFullPath(datasetFolder);
        var facts = FactsReader.Read(folder, about, published, softwareVersion);
        var root = PartFolder.Of(folder);
        try
        {
            AtomicFile.WriteText(Path.Combine(root, DataPackage.FileName), DataPackage.ToJson(facts));
            AtomicFile.WriteText(Path.Combine(root, Croissant.FileName), Croissant.ToJson(facts));
            AtomicFile.WriteText(Path.Combine(root, DataCard.FileName), DataCard.ToMarkdown(facts));
            AtomicFile.WriteText(Path.Combine(root, DictionaryFile), DataDictionary.ToMarkdown());
            AtomicFile.WriteText(Path.Combine(root, ColumnStatistics.FileName), ColumnStatistics.ToCsv(folder));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The pages in '{root}' could not be written ({e.Message}). Check rights and room on the disk, then compact again.", e);
        }
    }
}
