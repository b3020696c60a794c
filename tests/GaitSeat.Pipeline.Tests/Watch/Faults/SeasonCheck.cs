using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Watch.Faults;

/// <summary>What must hold of a season however it came about.</summary>
internal static class SeasonCheck
{
    /// <param name="undisturbed">The same clips, measured in peace.</param>
    /// <param name="disturbed">The dataset to check.</param>
    /// <param name="clips">How many clips there are.</param>
    /// <param name="tables">Tables that hold rows of every measured clip.</param>
    public static void Throw(string undisturbed, string disturbed, int clips, params string[] tables)
    {
        // No clip lost, none twice, no torn or temporary file, no byte another: all of it is that the files are the same.
        Assert.Equal(DatasetBytes.Of(undisturbed), DatasetBytes.Of(disturbed));

        using var query = new DatasetQuery(disturbed);
        var rows = query.Query("select count(*) as n, count(distinct clip_key) as keys from clips")[0];
        Assert.Equal((clips, clips), (Convert.ToInt32(rows["n"], null), Convert.ToInt32(rows["keys"], null)));
        foreach (var table in tables)
        {
            var without = query.Query($"select clip_file from clips where status = 'measured' and clip_key not in (select clip_key from {table})");
            Assert.True(without.Count == 0, $"{table} holds nothing of {without.Count} measured clips");
        }

        var done = JsonLines.ReadAll<NightEntry>(Path.Combine(disturbed, "worker", "journal"), "*.jsonl").Where(e => e.End is NightEnd.Measured or NightEnd.SetAside);
        Assert.All(done.GroupBy(e => e.ClipFile), g => Assert.True(g.Count() == 1, $"{g.Key} was done {g.Count()} times"));
        Assert.All(done, e => Assert.NotEqual("process_crashed", e.Reason));
    }
}
