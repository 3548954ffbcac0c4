using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Audit;

/// <summary>The provenance of all tables as PROV-JSON: which originals and table versions went into which commit, by which code, when.</summary>
/// <remarks>
/// Entities are originals (by hash), table versions, the dictionary and the protocol; activities are commits; the agent is the program. File names of
/// exports may name people and are left out. Source of the form: W3C Member Submission, The PROV-JSON Serialization, 24 April 2013.
/// </remarks>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
/// <param name="programVersion">Version of this program.</param>
public sealed class ProvenanceDocument(StudySetup setup, StudyRegistry registry, string programVersion)
{
    private const string Agent = "study:swingstudy";
    private readonly JsonObject _entities = [];
    private readonly JsonObject _activities = [];
    private readonly JsonObject _generated = [];
    private readonly JsonObject _used = [];
    private readonly JsonObject _associated = [];
    private readonly JsonObject _revisions = [];

    /// <summary>The document.</summary>
    public JsonObject Build()
    {
        foreach (var file in registry.IntakeFiles().OrderBy(file => file.Hash.ToString(), StringComparer.Ordinal))
        {
            _entities[Original(file.Hash.ToString())] = new JsonObject
            {
                ["prov:type"] = "study:Original", ["study:sha256"] = file.Hash.ToString(), ["study:bytes"] = file.Size, ["study:source"] = file.Source,
                ["study:linesRead"] = file.LinesRead, ["study:rowsTaken"] = file.RowsTaken, ["study:rowsRejected"] = file.RowsRejected, ["study:linesNotData"] = file.LinesNotData,
            };
        }

        _entities["study:dictionary"] = Declaration("Dictionary", setup.Dictionary.Hash.ToString(), setup.Dictionary.Version.ToString());
        _entities["study:protocol"] = Declaration("Protocol", setup.Protocol.Hash.ToString(), setup.Protocol.Version.ToString());
        var store = new TableStore(setup.Folder);
        foreach (var name in store.Names())
        {
            foreach (var version in store.Existing(name)!.History())
                Add(name, version);
        }

        return new JsonObject
        {
            ["prefix"] = new JsonObject { ["study"] = $"urn:study:{Uri.EscapeDataString(setup.Declaration.Name)}:", ["prov"] = "http://www.w3.org/ns/prov#" },
            ["entity"] = _entities,
            ["activity"] = _activities,
            ["agent"] = new JsonObject { [Agent] = new JsonObject { ["prov:type"] = "prov:SoftwareAgent", ["study:version"] = programVersion } },
            ["wasGeneratedBy"] = _generated,
            ["used"] = _used,
            ["wasAssociatedWith"] = _associated,
            ["wasDerivedFrom"] = _revisions,
        };
    }

    private void Add(string table, TableVersion version)
    {
        var entity = Version(table, version.Version);
        var activity = string.Create(CultureInfo.InvariantCulture, $"study:commit/{table}/{version.Version}");
        _entities[entity] = new JsonObject { ["prov:type"] = "study:TableVersion", ["study:table"] = table, ["study:version"] = version.Version };
        _activities[activity] = new JsonObject
        {
            ["prov:endTime"] = Time(version.At), ["study:stage"] = version.Info?.Stage, ["study:codeVersion"] = version.Info?.CodeVersion, ["study:run"] = version.Info?.RunId,
        };
        Relate(_generated, "prov:entity", entity, "prov:activity", activity);
        Relate(_associated, "prov:activity", activity, "prov:agent", Agent);
        foreach (var input in version.Info?.Inputs.Where(input => input.Value >= 0) ?? [])
            Relate(_used, "prov:activity", activity, "prov:entity", Version(input.Key, input.Value));
        foreach (var original in version.Added.SelectMany(file => file.OriginalHashes).Select(Original).Distinct(StringComparer.Ordinal).Where(_entities.ContainsKey))
            Relate(_used, "prov:activity", activity, "prov:entity", original);
        if (version.Info?.DictionaryHash == setup.Dictionary.Hash)
            Relate(_used, "prov:activity", activity, "prov:entity", "study:dictionary");
        if (version.Version > 0)
            Relate(_revisions, "prov:generatedEntity", entity, "prov:usedEntity", Version(table, version.Version - 1))["prov:type"] = "prov:Revision";
    }

    private static JsonObject Relate(JsonObject relations, string firstRole, string first, string secondRole, string second)
    {
        var relation = new JsonObject { [firstRole] = first, [secondRole] = second };
        relations[string.Create(CultureInfo.InvariantCulture, $"_:{relations.Count + 1}")] = relation;
        return relation;
    }

    private static JsonObject Declaration(string type, string hash, string version) =>
        new() { ["prov:type"] = $"study:{type}", ["study:sha256"] = hash, ["study:version"] = version };

    private static string Original(string hash) => $"study:original/{hash}";

    private static string Version(string table, long version) => string.Create(CultureInfo.InvariantCulture, $"study:table/{table}/{version}");

    private static string Time(Instant at) => at.ToString("uuuu-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
