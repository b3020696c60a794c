namespace GaitSeat.Pipeline.Season;

/// <summary>What a run over a folder is asked to do.</summary>
/// <param name="ClipFolder">The folder with the clips; the session sheet lies in it.</param>
/// <param name="DatasetFolder">Where tables and pictures go.</param>
public sealed record SeasonRequest(string ClipFolder, string DatasetFolder);

/// <summary>A run that cannot begin: the folder, the sheet or the dataset is not usable. Nothing was changed.</summary>
public sealed class SeasonException(string message, IReadOnlyList<string>? problems = null) : Exception(message)
{
    /// <summary>One line for each thing that is wrong.</summary>
    public IReadOnlyList<string> Problems { get; } = problems ?? [];
}
