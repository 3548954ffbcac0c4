using System.Text.Json.Nodes;
using SwingStudy.Pipeline.Audit;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Audit;

public sealed class ProvenanceDocumentTests
{
    // Top-level keys that the schema of PROV-JSON knows (W3C Member Submission of 24 April 2013).
    private static readonly string[] Known =
    [
        "prefix", "entity", "activity", "agent", "wasGeneratedBy", "used", "wasInformedBy", "wasStartedBy", "wasEndedBy", "wasInvalidatedBy", "wasDerivedFrom",
        "wasAttributedTo", "wasAssociatedWith", "actedOnBehalfOf", "wasInfluencedBy", "specializationOf", "alternateOf", "hadMember", "mentionOf", "bundle",
    ];

    [Fact]
    public void EveryRelationNamesThingsThatTheDocumentHolds()
    {
        using var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41, 42);
        study.Run();
        study.Swings("P01", 7, "cue", 42, 43, 44);
        study.Run();

        var document = new ProvenanceDocument(study.Setup, study.Registry, "1.0.0").Build();

        Assert.All(document, part => Assert.Contains(part.Key, Known));
        string[] things = [.. Keys(document["entity"]!), .. Keys(document["activity"]!), .. Keys(document["agent"]!)];
        var relations = new[] { "wasGeneratedBy", "used", "wasAssociatedWith", "wasDerivedFrom" }.SelectMany(name => document[name]!.AsObject()).ToList();
        Assert.All(relations.SelectMany(relation => relation.Value!.AsObject()).Where(role => role.Key != "prov:type"), role => Assert.Contains(role.Value!.GetValue<string>(), things));
        Assert.Equal(study.Tables.Names().Sum(name => study.Tables.Existing(name)!.History().Count), document["wasGeneratedBy"]!.AsObject().Count);
    }

    [Fact]
    public void AnEffectLeadsBackToCaptures()
    {
        using var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41, 42);
        study.Swings("P01", 7, "cue", 42, 43, 44);
        study.Run();
        var document = new ProvenanceDocument(study.Setup, study.Registry, "1.0.0").Build();

        var reached = new HashSet<string>();
        Follow("study:table/effects/0");

        Assert.Contains("study:table/swings/0", reached);
        Assert.Contains("study:table/captures/1", reached);

        void Follow(string entity)
        {
            if (!reached.Add(entity))
                return;
            foreach (var made in document["wasGeneratedBy"]!.AsObject().Where(made => Text(made.Value!, "prov:entity") == entity))
            {
                foreach (var used in document["used"]!.AsObject().Where(used => Text(used.Value!, "prov:activity") == Text(made.Value!, "prov:activity")))
                    Follow(Text(used.Value!, "prov:entity"));
            }
        }
    }

    private static string Text(JsonNode relation, string role) => relation[role]!.GetValue<string>();

    private static IEnumerable<string> Keys(JsonNode part) => part.AsObject().Select(entry => entry.Key);
}
