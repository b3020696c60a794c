using System.Text.Json.Nodes;

namespace GaitSeat.Store;

/// <summary>The JSON-LD context that Croissant 1.1 recommends (appendix 1 of its specification), as far as its terms are used here.</summary>
internal static class CroissantContext
{
    private static readonly string[] Terms =
        ["column", "containedIn", "extract", "field", "fileProperty", "fileObject", "fileSet", "includes", "isLiveDataset", "key", "recordSet", "references", "regex", "source", "transform"];

    internal static JsonObject Make()
    {
        var context = new JsonObject
        {
            ["@language"] = "en",
            ["@vocab"] = "http://schema.org/",
            ["sc"] = "http://schema.org/",
            ["cr"] = "http://mlcommons.org/croissant/",
            ["dct"] = "http://purl.org/dc/terms/",
            ["conformsTo"] = "dct:conformsTo",
            ["dataType"] = new JsonObject { ["@id"] = "cr:dataType", ["@type"] = "@vocab" },
        };
        foreach (var term in Terms) context[term] = "cr:" + term;
        return context;
    }
}
