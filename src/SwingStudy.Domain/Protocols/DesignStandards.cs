using System.Text.Json.Serialization;

namespace SwingStudy.Domain.Protocols;

/// <summary>The file of design standards.</summary>
/// <param name="Editions">Its editions, oldest first.</param>
internal sealed record DesignStandards(List<DesignStandard> Editions);

/// <summary>How the file is read: by code made when the program is built, for every command reads it.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(DesignStandards))]
internal sealed partial class DesignStandardsJson : JsonSerializerContext;
