using GaitSeat.Pipeline.Clips;

namespace GaitSeat.Pipeline.Season;

/// <summary>Whoever shows a run's progress. Frames are reported as the number followed so far in the clip under way.</summary>
public interface ISeasonWatcher : IProgress<int>
{
    void SeasonBegins(int clips);

    void ClipBegins(string clipFile);

    void ClipEnds(ClipOutcome outcome);

    void Note(string text);
}
