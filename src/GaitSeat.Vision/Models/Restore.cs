namespace GaitSeat.Vision.Models;

/// <summary>What to do about weights that are missing or damaged.</summary>
internal static class Restore
{
    public const string Remedy = "run 'npm ci --ignore-scripts' in the program's top folder to restore the weights";
}
