namespace GaitSeat.Faults.Features;

/// <summary>One number a fault model looks at; a line of the feature dictionary.</summary>
/// <param name="Name">snake_case, as tables and models name it.</param>
/// <param name="Family">The measure it comes from; features of a family are told, permuted and explained together.</param>
/// <param name="Unit">Unit of the value; empty where it has none.</param>
/// <param name="MissingMeans">When there is no value; empty where there always is.</param>
public sealed record FeatureDefinition(string Name, string Family, string Unit, string Definition, string MissingMeans);
