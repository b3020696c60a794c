using System.Globalization;

namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>Puts the morning's summary into the dataset's <c>worker/summaries</c> as Markdown and HTML, named after the night. Writing again replaces it.</summary>
public sealed class NightWriter(WorkerDesk desk, NightJournal journal, WorkWindow window, string season, TimeProvider time)
{
    /// <returns>Path of the Markdown file.</returns>
    public string Write(DateOnly night, int waiting, IReadOnlyList<string> notes)
    {
        var summary = NightSummary.Of(night, window.Local(time.GetUtcNow()), window.ToString(), season, journal.Read(night), waiting, notes);
        var folder = Directory.CreateDirectory(Path.Combine(desk.Folder, "summaries")).FullName;
        var path = Path.Combine(folder, night.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Put(path + ".html", NightHtml.Write(summary));
        Put(path + ".md", NightMarkdown.Write(summary));
        return path + ".md";
    }

    /// <summary>Several workers may write it at once; a reader sees one or the other whole.</summary>
    private void Put(string path, string text)
    {
        var temporary = $"{path}.{desk.Name}.tmp";
        File.WriteAllText(temporary, text);
        File.Move(temporary, path, overwrite: true);
    }
}
