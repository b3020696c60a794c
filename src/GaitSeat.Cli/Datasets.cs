using GaitSeat.Store;

namespace GaitSeat.Cli;

/// <summary>Opens datasets for commands that need one to be there: a slip in the path must not make an empty one.</summary>
internal static class Datasets
{
    /// <exception cref="DatasetException">There is no such folder, or it cannot be written to.</exception>
    public static Dataset OpenExisting(string folder) => Directory.Exists(folder)
        ? Dataset.Open(folder)
        : throw new DatasetException($"There is no dataset folder '{folder}'. Give the folder a run has written to.");
}
