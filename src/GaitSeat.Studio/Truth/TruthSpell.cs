using System.Text.Json.Serialization;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>A stretch of one gait as it truly is. Between spells stand the changes of gait, which belong to none.</summary>
/// <param name="StartS">s from the first frame.</param>
/// <param name="EndS">s from the first frame.</param>
/// <param name="Gait">The word of truth files: <c>rising</c>, <c>sitting</c>, <c>walk</c>, <c>canter</c> or <c>halt</c>.</param>
public sealed record TruthSpell(double StartS, double EndS, string Gait)
{
    /// <exception cref="InvalidDataException">The file names a gait we do not know.</exception>
    [JsonIgnore]
    public Gait GaitTerm => GaitWords.Parse(Gait);
}
